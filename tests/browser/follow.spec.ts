/** A clip followed from two touches and a tape, compared with the truth that it was rendered from. */
import { expect, type Page, test } from '@playwright/test';
import { takeWithTape } from './clip-start.ts';
import { finding, openDemo } from './main-job-finding.ts';
import { mark } from './main-job-marking.ts';
import { type TruthView, truthOf, viewOf } from './main-job-truth.ts';
import { chooseClampType, step } from './shell-start.ts';

test.setTimeout(180_000);

const truth = truthOf('clip-tape');

async function takeReleased(page: Page): Promise<TruthView> {
  const view = viewOf(truth, 'released');
  await openDemo(page, 'Clip with a tape');
  await takeWithTape(page, view);
  for (const point of [view.points.chamberFace, view.points.clevisPin])
    await mark(page, 'Released', view, point.px);
  const graduations = view.points.tapeGraduations ?? [];
  for (const inches of [1, 4, 7, 10]) {
    const graduation = graduations.find((each) => each.inches === inches);
    if (!graduation) throw new Error(`${inches} in cannot be seen`);
    if (inches <= 4) await page.getByRole('textbox', { name: 'Reading', exact: true }).fill(`${inches}`);
    await mark(page, 'Released', view, graduation.px);
  }
  return view;
}

/** With all that it needs marked, it is seen without a search for it. */
async function follow(page: Page): Promise<void> {
  const button = page.getByRole('button', { name: 'Follow through the clip' });
  await page.evaluate(() => scrollTo(0, 0));
  await expect(button).toBeInViewport();
  await button.click();
  await expect(page.getByText(/frames followed/)).toBeVisible({ timeout: 120_000 });
}

test('a clip is followed from one marked frame to its stroke, its curve and its table', {
  tag: '@phone',
}, async ({ page }) => {
  await takeReleased(page);
  await follow(page);
  await chooseClampType(page, '30');
  const found = await finding(page);
  expect(Math.abs(found.strokeMm - truth.strokeMm)).toBeLessThanOrEqual(found.UMm);
  expect(found.text).not.toBe('Within limit');
  const whole = page.getByRole('region', { name: 'The whole clip' });
  await expect(whole.getByText('To 90 %')).toBeVisible();
  await whole.getByRole('button', { name: 'Look through the clip' }).click();
  const curve = page.getByRole('slider', { name: /stroke/i });
  await expect(curve).toHaveAttribute('aria-valuenow', '17');
  await curve.focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('.clip-time')).toContainText('frame 18 of 135');
  const download = page.waitForEvent('download');
  await whole.getByRole('button', { name: /table/i }).click();
  expect((await download).suggestedFilename()).toBe('application-stroke.csv');
  await page.reload();
  expect(await finding(page)).toEqual(found);
});

test('what a reload breaks off goes on by itself, and moving a followed mark takes back what came of it', {
  tag: '@desk',
}, async ({ page }) => {
  await takeReleased(page);
  await page.getByRole('button', { name: 'Follow through the clip' }).click();
  await expect(page.getByText(/frame \d+ of 135/)).toBeVisible({ timeout: 60_000 });
  await page.reload();
  await expect(page.getByText(/135 frames followed/)).toBeVisible({ timeout: 120_000 });
  const pin = page.getByRole('button', { name: /^Clevis pin, .*x / });
  await pin.first().focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('button', { name: 'Follow through the clip' })).toBeVisible();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByText(/135 frames followed/)).toBeVisible();

  // A frame is put right; a reload breaks that off as well, and it goes on.
  await step(page, 1).click();
  await page.getByRole('button', { name: 'Look through the clip' }).click();
  const marked = page.locator('.curve-marked');
  await expect(marked).toHaveAttribute('d', /^[^z]*z$/, { timeout: 30_000 });
  // Picture, readout, chart and steps stand together: nothing of them scrolls.
  const controls = page.locator('.clip-controls');
  expect(await controls.evaluate((element) => element.scrollHeight - element.clientHeight)).toBe(0);
  const shown = await page.locator('.clip-chooser .viewer').boundingBox();
  expect(shown?.height).toBeGreaterThan(240);
  await page.getByRole('slider', { name: /stroke/i }).press('Home');
  await page.getByRole('button', { name: 'Put right in this frame' }).click();
  await page.getByRole('button', { name: /^Clevis pin/ }).press('ArrowRight');
  await page.getByRole('button', { name: 'Follow from here' }).click();
  await expect(page.getByRole('progressbar', { name: 'The whole clip' })).toBeVisible();
  await page.reload();
  await expect(marked).toHaveAttribute('d', /^[^z]*z[^z]*z$/, { timeout: 60_000 });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(marked).toHaveAttribute('d', /^[^z]*z$/, { timeout: 30_000 });
});
