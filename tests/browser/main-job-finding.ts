/** The two ends of the main job: opening a set of the demo, and reading the finding. */
import { expect, type Page, test } from '@playwright/test';
import type { Truth } from './main-job-truth.ts';
import { step, titleBlock } from './shell-start.ts';

export async function openDemo(page: Page, name: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name, exact: true }).click();
  await expect(page.getByRole('textbox', { name: 'Unit' })).toHaveValue(/Gravel trailer GT-/, {
    timeout: 20_000,
  });
}

export type Found = { readonly strokeMm: number; readonly UMm: number; readonly text: string };

export async function finding(page: Page): Promise<Found> {
  await step(page, 7).click();
  await page.getByRole('combobox', { name: 'Dimensions in' }).selectOption({ label: 'millimetres' });
  const stroke = titleBlock(page).getByText('Stroke', { exact: true }).locator('..').getByRole('status');
  await expect(stroke).toHaveAttribute('aria-busy', 'false');
  await expect(stroke).toHaveText(/^[\d.]+ ± [\d.]+ mm$/);
  const [, value, U] = /([\d.]+) ± ([\d.]+)/.exec((await stroke.textContent()) ?? '') ?? [];
  const text = (await titleBlock(page).locator('.outcome').textContent()) ?? '';
  return { strokeMm: Number(value), UMm: Number(U), text };
}

/** The angle as the finding's table gives it, in degrees with its U. */
async function angle(page: Page, name: string): Promise<readonly [number, number]> {
  const row = page.getByRole('row', { name: new RegExp(`^${name}`) });
  const [, value, U] = /([\d.]+)° ± ([\d.]+)°/.exec((await row.textContent()) ?? '') ?? [];
  return [Number(value), Number(U)];
}

/** Both, against the truth. */
export async function expectArmAngles(page: Page, truth: Truth): Promise<void> {
  for (const [name, trueDeg] of [
    ['Arm angle, released', truth.armAngleReleasedDeg],
    ['Arm angle, applied', truth.armAngleAppliedDeg],
  ] as const) {
    const [deg, U] = await angle(page, name);
    expect(Math.abs(deg - trueDeg)).toBeLessThanOrEqual(U);
    test.info().annotations.push({ type: name, description: `${deg}° ± ${U}° for ${trueDeg}°` });
  }
}
