import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import {
  choose,
  chooseClampType,
  leave,
  photo,
  picture,
  startPair,
  step,
  titleBlock,
  touch,
} from './shell-start.ts';

test('a reload brings back pictures, marks, chamber and the step at hand', { tag: '@phone' }, async ({
  page,
}) => {
  await startPair(page);
  await page.getByRole('textbox', { name: 'Unit' }).fill('GT-14');
  await chooseClampType(page, '30');
  await step(page, 3).click();
  await touch(page, 'Released', 0.3, 0.5);
  await touch(page, 'Released', 0.6, 0.5);
  await expect(page.locator('.asking')).toContainText('camshaft');
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Marks on the released picture' })).toBeVisible();
  await expect(page.locator('.asking')).toContainText('camshaft');
  await expect(picture(page, 'Released').locator('canvas').first()).toBeVisible();
  await expect(picture(page, 'Released').getByRole('button', { name: /Clevis pin/ })).toHaveCount(1);
  await expect(page.getByRole('textbox', { name: 'Unit' })).toHaveValue('GT-14');
  await expect(titleBlock(page)).toContainText('type 30, standard stroke');
});

test('what was entered just before the page went away is there again', { tag: '@desk' }, async ({ page }) => {
  await startPair(page);
  for (const unit of ['G', 'GT', 'GT-', 'GT-0', 'GT-09'])
    await page.getByRole('textbox', { name: 'Unit' }).fill(unit);
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Unit' })).toHaveValue('GT-09');
});

test('a crash of the page loses nothing that was entered', { tag: '@desk' }, async ({ page, context }) => {
  await startPair(page);
  await page.getByRole('textbox', { name: 'Unit' }).fill('GT-14');
  await step(page, 3).click();
  await touch(page, 'Released', 0.3, 0.5);
  await expect(page.locator('.asking')).toContainText('clevis pin');
  // A crash says no farewell; what was entered a second ago has long been written.
  await page.waitForTimeout(1000);
  const session = await context.newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  session.send('Page.crash').catch(() => undefined);
  await crashed;
  const again = await context.newPage();
  await again.goto('/');
  await expect(again.getByRole('textbox', { name: 'Unit' })).toHaveValue('GT-14');
  await expect(picture(again, 'Released').getByRole('button', { name: /Chamber face/ })).toHaveCount(1);
});

test('earlier inspections are listed, open where they were left, and can be removed', {
  tag: '@phone',
}, async ({ page }) => {
  await startPair(page);
  await page.getByRole('textbox', { name: 'Unit' }).fill('GT-14');
  await step(page, 6).click();
  await leave(page);
  await page.reload();
  const line = page.getByRole('button', { name: /^GT-14/ });
  await expect(line).toBeVisible();
  await line.click();
  await expect(page.getByRole('heading', { name: 'GT-14' })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Axle 1, left/ })).toContainText('Begun');
  await page.getByRole('button', { name: 'All inspections' }).click();
  await page.getByRole('button', { name: 'Remove GT-14 from this device' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(page.getByText('None yet.')).toBeVisible();
});

test('a saved record opens again and asks for its pictures by name, recognised by content', {
  tag: '@desk',
}, async ({ page, browser }) => {
  await startPair(page);
  await page.getByRole('textbox', { name: 'Unit' }).fill('GT-14');
  await step(page, 3).click();
  await touch(page, 'Released', 0.3, 0.5);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save record' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^strokewitness-GT-14-\d{4}-\d\d-\d\d\.json$/);
  const saved = await download.path();

  const elsewhere = await browser.newContext();
  const other = await elsewhere.newPage();
  await other.goto('/');
  const [chooser] = await Promise.all([
    other.waitForEvent('filechooser'),
    other.getByRole('button', { name: 'Open a saved record' }).click(),
  ]);
  await chooser.setFiles({
    name: download.suggestedFilename(),
    mimeType: 'application/json',
    buffer: readFileSync(saved),
  });
  const missing = other.getByRole('region', { name: 'Pictures to bring back' });
  await expect(missing).toContainText('released.jpg');
  await expect(missing).toContainText('applied.jpg');
  await expect(picture(other, 'Released')).toContainText('Released picture: not on this device');
  // Another picture under the same name is not taken for it; the right one under another name is.
  await choose(other, 'Choose the files', [await photo(other, 'released.jpg', '#ffffff')]);
  await expect(other.getByText('not taken yet')).toBeVisible();
  await expect(missing).toContainText('released.jpg');
  await choose(other, 'Choose the files', [
    await photo(other, 'renamed.jpg', '#6a4b33'),
    await photo(other, 'applied.jpg', '#33506a'),
  ]);
  await expect(missing).toBeHidden();
  await step(other, 3).click();
  await expect(picture(other, 'Released').getByRole('button', { name: /Chamber face/ })).toHaveCount(1);
  await elsewhere.close();
});

test('an older saved record does not take the place of the newer work on this device', {
  tag: '@desk',
}, async ({ page }) => {
  await startPair(page);
  const unit = page.getByRole('textbox', { name: 'Unit' });
  await unit.fill('as saved');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save record' }).click(),
  ]);
  const saved = readFileSync(await download.path());
  await unit.fill('worked on');
  await leave(page);
  await choose(page, 'Open a saved record', [
    { name: 'record.json', mimeType: 'application/json', buffer: saved },
  ]);
  await expect(unit).toHaveValue('as saved');
  await leave(page);
  await expect(page.getByRole('button', { name: /^as saved/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /^worked on/ })).toBeVisible();
});

test('a browser that keeps nothing says so, and the work goes on', { tag: '@phone' }, async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('refused', 'SecurityError');
    };
  });
  await startPair(page);
  await expect(page.getByText(/keeps nothing on this device/)).toBeVisible();
  await step(page, 3).click();
  await touch(page, 'Released', 0.3, 0.5);
  await expect(picture(page, 'Released').getByRole('button', { name: /Chamber face/ })).toHaveCount(1);
  // The record is small enough for the page's other memory; the pictures are asked for.
  await page.reload();
  await expect(page.getByRole('button', { name: /^Chamber face/ })).toContainText('1 of 1');
  await step(page, 1).click();
  await expect(page.getByRole('region', { name: 'Pictures to bring back' })).toContainText('released.jpg');
});

test('after a mistake of the program the record can still be saved', { tag: '@desk' }, async ({ page }) => {
  await startPair(page);
  await page.getByRole('textbox', { name: 'Unit' }).fill('GT-14');
  await page.addInitScript(() => {
    // The screen breaks as soon as it wants to measure.
    Object.defineProperty(globalThis, 'Worker', {
      value: class {
        constructor() {
          throw new Error('broken on purpose');
        }
      },
    });
  });
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Something in the program broke' })).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save record' }).click(),
  ]);
  expect(download.suggestedFilename()).toContain('GT-14');
});
