/** Two tabs of one browser: an inspection is worked on in one of them at a time, and nothing entered is lost. */
import { expect, type Page, test } from '@playwright/test';
import { choose, leave, photo, startPair } from './shell-start.ts';

const unit = (page: Page) => page.getByRole('textbox', { name: 'Unit' });
const listed = (page: Page) => page.getByRole('button', { name: /^GT-/ });

async function startNamed(page: Page, name: string): Promise<void> {
  await startPair(page);
  await unit(page).fill(name);
}

test('a second tab says that the inspection is open in the first, and takes it over with all that was entered', {
  tag: '@phone',
}, async ({ page, context }) => {
  await startNamed(page, 'GT-14');
  const second = await context.newPage();
  await second.goto('/');
  await expect(second.getByRole('alert')).toContainText('“GT-14” is open in another tab or window');
  await expect(unit(second)).toHaveCount(0);

  await unit(page).fill('GT-15');
  await listed(second).click();
  await expect(unit(second)).toHaveValue('GT-15');
  await expect(second.getByRole('alert')).toBeEmpty();
  await expect(page.getByRole('alert')).toContainText('“GT-15” was taken over');
  await expect(unit(page)).toHaveCount(0);

  // What is entered from here on stays, whichever tab goes last.
  await unit(second).fill('GT-16');
  await second.close();
  await page.reload();
  await expect(unit(page)).toHaveValue('GT-16');
});

test('a tab loaded again has its own inspection again; one that is closed leaves it free', {
  tag: '@desk',
}, async ({ page, context }) => {
  await startNamed(page, 'GT-14');
  const second = await context.newPage();
  await second.goto('/');
  await expect(second.getByRole('alert')).toContainText('is open in another tab');
  await page.reload();
  await expect(unit(page)).toHaveValue('GT-14');
  await page.close();
  await second.reload();
  await expect(unit(second)).toHaveValue('GT-14');
});

test('what one tab removes, the other cannot keep or open', { tag: '@desk' }, async ({ page, context }) => {
  await startNamed(page, 'GT-14');
  await leave(page);
  const second = await context.newPage();
  await second.goto('/');
  await listed(second).click();
  await expect(second.getByRole('heading', { name: 'GT-14' })).toBeVisible();
  await page.getByRole('button', { name: 'Remove GT-14 from this device' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(page.getByText('None yet.')).toBeVisible();
  await expect(second.getByRole('alert')).toContainText('was taken over by another tab');
  await second.reload();
  await expect(second.getByText('None yet.')).toBeVisible();

  // The cautions were read on this device.
  await choose(second, 'Start with pictures', [await photo(second, 'released.jpg', '#6a4b33')]);
  await unit(second).fill('GT-21');
  await leave(second);
  await page.reload();
  await second.getByRole('button', { name: 'Remove GT-21 from this device' }).click();
  await expect(listed(page)).toBeVisible();
  await second.getByRole('dialog').getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(second.getByText('None yet.')).toBeVisible();
  await listed(page).click();
  await expect(page.getByRole('alert')).toContainText('no longer on this device');
});

test('a form that is not done yet is there after a screen left, a reload and in the tab that takes over', {
  tag: '@phone',
}, async ({ page, context }) => {
  await startNamed(page, 'GT-14');
  const repair = (of: Page) =>
    of
      .locator('.sheet-part')
      .filter({ has: of.getByRole('heading', { name: 'Repair', exact: true }) })
      .getByRole('textbox', { name: /What was done/ });
  await page.goBack();
  await page.getByRole('heading', { name: 'Repair', exact: true }).click();
  await page.getByRole('button', { name: 'Enter a repair' }).click();
  await repair(page).fill('Clevis pin renewed');
  await page.getByRole('button', { name: 'Enter a tape reading' }).first().click();
  await page.getByRole('textbox', { name: 'Reading, released' }).fill('5 1/8');

  await page.getByRole('button', { name: 'Vehicle', exact: true }).click();
  await page.getByRole('button', { name: /^Axle 1, left/ }).click();
  await expect(repair(page)).toHaveValue('Clevis pin renewed');
  await page.reload();
  await expect(repair(page)).toHaveValue('Clevis pin renewed');
  const second = await context.newPage();
  await second.goto('/');
  await listed(second).click();
  await expect(repair(second)).toHaveValue('Clevis pin renewed');
  await expect(second.getByRole('textbox', { name: 'Reading, released' })).toHaveValue('5 1/8 in');
  await expect(listed(page)).toBeVisible();

  await second.getByRole('button', { name: 'Note the repair' }).click();
  await second.getByRole('button', { name: 'Cancel' }).click();
  await second.reload();
  await expect(second.getByText('Clevis pin renewed', { exact: true })).toBeVisible();
  await expect(second.getByRole('textbox', { name: 'Reading, released' })).toHaveCount(0);
  await expect(repair(second)).toHaveCount(0);
});
