/** From the photo pair with a tape to a finding by touch, taking what is proposed: the face alone is marked by hand. */
import { expect, test } from '@playwright/test';
import { spotOf } from './main-job-marking.ts';
import { truthOf, viewOf } from './main-job-truth.ts';
import { picture } from './shell-start.ts';

test.setTimeout(120_000);

const MOST_TAPS = 8;

test('tape and pin are proposed as the pictures are opened, and taken with one tap each', {
  tag: '@phone',
}, async ({ page }) => {
  const truth = truthOf('pair-tape');
  let taps = 0;
  const press = async (name: string | RegExp) => {
    await page.getByRole('button', { name }).first().tap();
    taps++;
  };
  await page.goto('/');
  await press('Photos with a tape');
  await press(/^Tape along the rod in both/);
  for (const state of ['Released', 'Applied'] as const) {
    const view = viewOf(truth, state === 'Released' ? 'released' : 'applied');
    const offers = page.getByRole('region', { name: 'Found without a mark' });
    await expect(offers).toContainText(/\d+ graduations, .* by their numerals, \d\d % sure/, {
      timeout: 60_000,
    });
    await expect(offers.getByRole('button', { name: 'Take clevis pin' })).toBeVisible();
    await page.screenshot({ path: test.info().outputPath(`offered-${state}.png`) });
    const stage = picture(page, state).locator('.viewer-stage');
    const { spot } = await spotOf(stage, view, view.points.chamberFace.px);
    await page.touchscreen.tap(spot.x, spot.y);
    taps++;
    await press(/^Take what was found\. Next/);
  }
  await press('Type 30');
  const result = page.locator('.result-line');
  await expect(result).toContainText(/limit|decided/i, { timeout: 60_000 });
  expect(await result.textContent()).toMatch(/Within limit|Not decided/);
  expect(taps).toBeLessThanOrEqual(MOST_TAPS);
  await page.getByRole('button', { name: /^Step 7:/ }).tap();
  await page.getByRole('combobox', { name: 'Dimensions in' }).selectOption({ label: 'millimetres' });
  const stroke = page
    .getByRole('region', { name: 'Title block' })
    .getByText('Stroke', { exact: true })
    .locator('..')
    .getByRole('status');
  await expect(stroke).toHaveText(/^[\d.]+ ± [\d.]+ mm$/);
  const [, value, U] = /([\d.]+) ± ([\d.]+)/.exec((await stroke.textContent()) ?? '') ?? [];
  expect(Math.abs(Number(value) - truth.strokeMm)).toBeLessThanOrEqual(Number(U));
});
