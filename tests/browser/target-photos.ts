/** A photo pair with the printed target in it, made for the test, and where the target's corners truly are. */
import type { Page } from '@playwright/test';
import { type CardPicture, type CardPictureOptions, cardPicture, PLAIN } from '../vision/card-picture.ts';
import type { FileToChoose } from './shell-start.ts';

const WIDTH_PX = 1600;
const HEIGHT_PX = 1200;

export type TargetPhoto = {
  readonly file: FileToChoose;
  readonly corner: (marker: number, corner: number) => readonly [x: number, y: number];
};

/** The card at a place of a larger gray picture, coded as JPEG by the browser. */
export async function targetPhoto(
  page: Page,
  name: string,
  [left, top]: readonly [number, number],
  over: Partial<CardPictureOptions>,
): Promise<TargetPhoto> {
  const card = cardPicture({ ...PLAIN, markerPx: 90, turnDeg: 4, tiltDeg: 12, ...over });
  return {
    file: { name, mimeType: 'image/jpeg', buffer: await jpeg(page, card, left, top) },
    corner: (marker, corner) => {
      const [x, y] = card.corner(marker, corner);
      return [x + left, y + top];
    },
  };
}

async function jpeg(page: Page, { gray }: CardPicture, left: number, top: number): Promise<Buffer> {
  const { widthPx, heightPx, values } = gray;
  const base64 = await page.evaluate(
    ({ widthPx, heightPx, text, left, top, size }) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = size;
      const pen = canvas.getContext('2d');
      if (!pen) throw new Error('no canvas');
      pen.fillStyle = '#777';
      pen.fillRect(0, 0, canvas.width, canvas.height);
      const image = new ImageData(widthPx, heightPx);
      const levels = atob(text);
      for (let at = 0; at < levels.length; at++)
        image.data.set([levels.charCodeAt(at), levels.charCodeAt(at), levels.charCodeAt(at), 255], 4 * at);
      pen.putImageData(image, left, top);
      return canvas.toDataURL('image/jpeg', 0.92).split(',')[1] ?? '';
    },
    {
      ...{ widthPx, heightPx, left, top },
      text: Buffer.from(values).toString('base64'),
      size: [WIDTH_PX, HEIGHT_PX] as [number, number],
    },
  );
  return Buffer.from(base64, 'base64');
}
