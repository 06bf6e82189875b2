/** A sample photo as it is, and the same one blurred: advice on the second alone, before any mark. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { choose, type FileToChoose } from './shell-start.ts';

test.setTimeout(120_000);

const SAMPLE = readFileSync('sample-media/pair-tape/released.jpg');

test('a blurred picture is said to be so as it is opened, a good one is not', { tag: '@desk' }, async ({
  page,
}) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await choose(page, 'I have read this', [
    { name: 'released.jpg', mimeType: 'image/jpeg', buffer: SAMPLE },
    await spoiled(page, 'blur(4px)'),
  ]);
  const advice = page.getByRole('region', { name: 'About the pictures' });
  // The first is looked at before the second.
  await expect(advice).toContainText(/Applied: Blurred, edges \d\.\d px wide/, { timeout: 60_000 });
  await expect(advice).not.toContainText('Released');
  await page.screenshot({ path: test.info().outputPath('advice.png') });
});

async function spoiled(page: Page, filter: string): Promise<FileToChoose> {
  const base64 = await page.evaluate(
    async ({ jpeg, filter }) => {
      const image = new Image();
      image.src = `data:image/jpeg;base64,${jpeg}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
      const pen = canvas.getContext('2d');
      if (!pen) throw new Error('no canvas');
      pen.filter = filter;
      pen.drawImage(image, 0, 0);
      return canvas.toDataURL('image/jpeg', 0.9).split(',')[1] ?? '';
    },
    { jpeg: SAMPLE.toString('base64'), filter },
  );
  return { name: 'applied.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(base64, 'base64') };
}
