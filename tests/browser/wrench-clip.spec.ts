/** A clip of a wrench that turns over five applications, rendered with truth: marked on one frame, followed, read as a turn. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { openAdjusterCheck } from './adjuster-start.ts';
import { spotOf } from './main-job-marking.ts';
import type { FrameSize, Px } from './main-job-truth.ts';
import { choose } from './shell-start.ts';

test.setTimeout(180_000);

type TruthFrame = Readonly<Record<'centre' | 'tip' | 'pin' | 'camshaft', Px>> & { readonly turnDeg: number };
const FOLDER = 'tests/fixtures/wrench';
const truth: FrameSize & { readonly frames: readonly TruthFrame[]; readonly stepsDeg: readonly number[] } =
  JSON.parse(readFileSync(`${FOLDER}/truth.json`, 'utf8'));
const SEED = 4;

async function markAt(page: Page, place: Px): Promise<void> {
  const viewer = page.locator('.wrench-viewer');
  await viewer.getByRole('button', { name: 'Fit the whole picture' }).click();
  const stage = viewer.locator('.viewer-stage');
  await stage.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const { x, y } = (await spotOf(stage, truth, place)).spot;
  await page.mouse.move(x, y);
  for (let turns = 0; turns < 4; turns++) await page.mouse.wheel(0, -300);
  await page.evaluate(
    () => new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted))),
  );
  await page.mouse.click(x, y);
}

test('a wrench marked on one frame is followed: applications counted, turn within its uncertainty', {
  tag: '@desk',
}, async ({ page }) => {
  const part = await openAdjusterCheck(page, 'Clockwise');
  await part.getByRole('checkbox', { name: /camera stands on something/ }).check();
  const buffer = readFileSync(`${FOLDER}/wrench.mp4`);
  await choose(page, 'Take a picture or a clip now', [{ name: 'wrench.mp4', mimeType: 'video/mp4', buffer }]);
  const slider = part.getByRole('slider', { name: 'Place in the clip' });
  await expect(slider).toBeEnabled();
  await slider.fill(`${SEED}`);
  await expect(page.locator('.wrench-viewer canvas').first()).toBeVisible();
  const seed = truth.frames[SEED];
  if (!seed) throw new Error('no such frame');
  for (const [what, asked] of [
    ['centre', 'far out on the wrench'],
    ['tip', 'camshaft'],
    ['camshaft', 'clevis pin'],
    ['pin', 'marked'],
  ] as const) {
    await markAt(page, seed[what]);
    await expect(page.locator('.wrench .asking')).toContainText(asked);
  }
  await part.getByRole('button', { name: 'Follow through the clip' }).click();
  const read = part.locator('.turn-read');
  await expect(read).toContainText('in 5 applications', { timeout: 120_000 });
  const [, deg = '', U = '', way = ''] =
    /^([\d.]+)° ± ([\d.]+)° (\S+)/.exec((await read.locator('.stroke-value').textContent()) ?? '') ?? [];
  const sought = truth.stepsDeg.reduce((sum, step) => sum + step, 0);
  expect(way).toBe('counter-clockwise');
  expect(Math.abs(Number(deg) - sought)).toBeLessThan(Number(U));
  await expect(read.getByRole('status')).toHaveText('Takes up');
  await expect(part.getByRole('button', { name: 'Follow through the clip' })).toBeDisabled();
  await expect(part.getByRole('button', { name: /^Picture 6, after 5 applications/ })).toContainText(
    'marked',
  );
});

test('looking at another frame takes the marks with it, says so, and one undo brings both back', {
  tag: '@desk',
}, async ({ page }) => {
  const part = await openAdjusterCheck(page, 'Clockwise');
  const buffer = readFileSync(`${FOLDER}/wrench.mp4`);
  await choose(page, 'Take a picture or a clip now', [{ name: 'wrench.mp4', mimeType: 'video/mp4', buffer }]);
  const slider = part.getByRole('slider', { name: 'Place in the clip' });
  await expect(slider).toBeEnabled();
  const seed = truth.frames[0];
  if (!seed) throw new Error('no such frame');
  await markAt(page, seed.centre);
  const asking = page.locator('.wrench .asking');
  await expect(asking).toContainText('far out on the wrench');

  await slider.scrollIntoViewIfNeeded();
  const box = await slider.boundingBox();
  if (!box) throw new Error('no slider');
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + 10, y);
  await page.mouse.down();
  for (const share of [0.2, 0.4, 0.6]) await page.mouse.move(box.x + share * box.width, y);
  await page.mouse.up();
  await expect(part.getByText('Undo brings both back')).toBeVisible();
  await expect(asking).toContainText('middle of the hex');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(asking).toContainText('far out on the wrench');
  await expect(part.getByText('Undo brings both back')).toBeHidden();
  await expect(slider).toHaveValue('0');
});
