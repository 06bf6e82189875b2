/** A gray picture made for a test, as the browser codes it: laid on a larger one where that has a size of its own. */
import type { Page } from '@playwright/test';
import type { Gray } from '../../src/vision/gray.ts';

type On = {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
};

export async function grayJpeg(
  page: Page,
  { widthPx, heightPx, values }: Gray,
  on: On = { leftPx: 0, topPx: 0, widthPx, heightPx },
): Promise<Buffer> {
  const base64 = await page.evaluate(
    ({ widthPx, heightPx, text, on }) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [on.widthPx, on.heightPx];
      const pen = canvas.getContext('2d');
      if (!pen) throw new Error('no canvas');
      pen.fillStyle = '#777';
      pen.fillRect(0, 0, canvas.width, canvas.height);
      const image = new ImageData(widthPx, heightPx);
      const levels = atob(text);
      for (let at = 0; at < levels.length; at++) {
        image.data.fill(levels.charCodeAt(at), 4 * at, 4 * at + 3);
        image.data[4 * at + 3] = 255;
      }
      pen.putImageData(image, on.leftPx, on.topPx);
      return canvas.toDataURL('image/jpeg', 0.92).split(',')[1] ?? '';
    },
    { widthPx, heightPx, text: Buffer.from(values).toString('base64'), on },
  );
  return Buffer.from(base64, 'base64');
}
