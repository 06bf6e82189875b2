import type { Locator, Page } from '@playwright/test';

/** From the first screen to the check of an automatic adjuster that takes up in this direction. */
export async function openAdjusterCheck(
  page: Page,
  direction: 'Clockwise' | 'Counter-clockwise',
): Promise<Locator> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start an inspection' }).click();
  await page.getByRole('button', { name: 'I have read this' }).click();
  await page.getByRole('button', { name: 'Add trailer axle' }).click();
  await page.getByRole('button', { name: /^Axle 1, left/ }).click();
  const part = page
    .locator('.sheet-part')
    .filter({ has: page.getByRole('heading', { name: 'Adjuster', exact: true }) });
  await part.locator('summary').click();
  await part.getByRole('button', { name: 'Automatic', exact: true }).click();
  await part.getByRole('button', { name: direction, exact: true }).click();
  return part;
}
