/** What the shell's specs share: pictures made on the spot, and the way to the first marks. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { expect, type FileChooser, type Page, test } from '@playwright/test';

export type FileToChoose = { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

/** A photo that is unlike every other by its colour. */
export async function photo(page: Page, name: string, colour: string): Promise<FileToChoose> {
  const base64 = await page.evaluate(async (fill) => {
    const canvas = document.createElement('canvas');
    canvas.width = 1200;
    canvas.height = 900;
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('no canvas');
    pen.fillStyle = fill;
    pen.fillRect(0, 0, 1200, 900);
    pen.fillStyle = '#888';
    pen.fillRect(150, 420, 700, 60);
    return canvas.toDataURL('image/jpeg', 0.8).split(',')[1] ?? '';
  }, colour);
  return { name, mimeType: 'image/jpeg', buffer: Buffer.from(base64, 'base64') };
}

export async function choose(page: Page, button: string, files: readonly FileToChoose[]): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: button }).click(),
  ]);
  await give(chooser, files);
}

/** Bytes go to the browser as text, a megabyte of them in seconds: beyond this many they go by way of files. */
const MOST_BYTES_AS_TEXT = 50_000;

/** Small files are given as they are, with the type that they say; of large ones the browser reads the type off the name. */
async function give(chooser: FileChooser, files: readonly FileToChoose[]): Promise<void> {
  const bytes = files.reduce((sum, { buffer }) => sum + buffer.length, 0);
  if (bytes <= MOST_BYTES_AS_TEXT) return chooser.setFiles([...files]);
  const folder = test.info().outputPath(randomUUID());
  mkdirSync(folder, { recursive: true });
  const paths = files.map(({ name, buffer }) => {
    const path = `${folder}/${name}`;
    writeFileSync(path, buffer);
    return path;
  });
  await chooser.setFiles(paths);
}

/** From the first screen to two photos taken as released and applied. */
export async function startPair(page: Page): Promise<void> {
  await page.goto('/');
  const files = [await photo(page, 'released.jpg', '#6a4b33'), await photo(page, 'applied.jpg', '#33506a')];
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await choose(page, 'I have read this', files);
  await expect(page.getByText('taken as released')).toBeVisible();
  await expect(page.getByText('taken as applied')).toBeVisible();
}

/** The page as its service worker serves it, once that is there; the test lets service workers in. */
export async function openWithoutNetwork(page: Page): Promise<void> {
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  await page.context().setOffline(true);
}

/** From the pictures of a wheel end back to the list of inspections. */
export async function leave(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Axle \d+, (left|right)$/ }).click();
  await page.getByRole('button', { name: 'Vehicle', exact: true }).click();
  await page.getByRole('button', { name: 'All inspections' }).click();
}

export const step = (page: Page, number: number) =>
  page.getByRole('button', { name: new RegExp(`^Step ${number}:`) });

export const picture = (page: Page, state: 'Released' | 'Applied') =>
  page.getByRole('region', { name: `${state} picture`, exact: true });

/** A tap or a click at a part of the picture's width and height. */
export async function touch(page: Page, state: 'Released' | 'Applied', x: number, y: number): Promise<void> {
  const region = picture(page, state);
  await expect(region.locator('canvas').first()).toBeVisible();
  await region.scrollIntoViewIfNeeded();
  const box = await region.boundingBox();
  if (!box) throw new Error('the picture is not there');
  const [left, top] = [box.x + box.width * x, box.y + box.height * y];
  const byTouch = await page.evaluate(() => navigator.maxTouchPoints > 0);
  if (byTouch) await page.touchscreen.tap(left, top);
  else await page.mouse.click(left, top);
}

export const titleBlock = (page: Page) => page.getByRole('region', { name: 'Title block' });

export async function chooseClampType(page: Page, type: string): Promise<void> {
  await step(page, 5).click();
  await page.getByRole('radio', { name: 'Clamp band' }).check();
  await page.getByRole('combobox', { name: 'Type and outside diameter' }).selectOption(type);
}
