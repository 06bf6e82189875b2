import { expect, test } from '@playwright/test';
import {
  choose,
  chooseClampType,
  photo,
  picture,
  startPair,
  step,
  titleBlock,
  touch,
} from './shell-start.ts';

test('the first screen says what this is, what to beware of and that it is an aid', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Strokewitness');
  await expect(page.getByText(/Chock the wheels both ways/)).toBeVisible();
  await expect(page.getByText(/no certified inspection/)).toBeVisible();
  await expect(page.getByText(/Never open, strike, heat or cut a spring brake chamber/)).toBeVisible();
});

test('the cautions come before the first picture, and leaving them opens nothing', async ({ page }) => {
  await page.goto('/');
  // What came of a file is in sight, also where the page was scrolled to the button.
  const letter = { name: 'letter.json', mimeType: 'application/json', buffer: Buffer.from('{}') };
  await choose(page, 'Open a saved record', [letter]);
  await expect(page.getByRole('alert').getByText(/letter\.json.*no saved record/)).toBeInViewport();
  let choosers = 0;
  page.on('filechooser', () => choosers++);
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  const dialog = page.getByRole('dialog', { name: 'Before the first picture' });
  await expect(dialog).toBeVisible();
  await expect(dialog.getByRole('heading')).toBeInViewport();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await expect(dialog).toBeVisible();
  expect(choosers).toBe(0);
  await choose(page, 'I have read this', [await photo(page, 'released.jpg', '#777777')]);
  await expect(page.getByText('taken as released')).toBeVisible();
  await page.getByRole('button', { name: 'Cautions' }).click();
  await expect(dialog).toBeVisible();
});

test('a picture chosen where a record was asked for waits for the cautions too', async ({ page }) => {
  await page.goto('/');
  await choose(page, 'Open a saved record', [await photo(page, 'released.jpg', '#777777')]);
  const dialog = page.getByRole('dialog', { name: 'Before the first picture' });
  await expect(dialog).toBeVisible();
  await expect(page.getByText('taken as released')).toHaveCount(0);
  await dialog.getByRole('button', { name: 'I have read this' }).click();
  await expect(page.getByText('taken as released')).toBeVisible();
});

test('two photos are taken in their order, can be swapped, and a third waits to be named', async ({
  page,
}) => {
  await startPair(page);
  const files = page.getByRole('list', { name: 'Files of this record' });
  await expect(files.getByRole('listitem').first()).toContainText('released.jpg');
  await page.getByRole('button', { name: 'Swap released and applied' }).click();
  await expect(files.getByRole('listitem').first()).toContainText('taken as applied');
  await choose(page, 'Choose other pictures', [await photo(page, 'pulled.jpg', '#aa9911')]);
  const third = files.getByRole('listitem').nth(2);
  await expect(third).toContainText('not taken yet');
  await third.getByRole('button', { name: 'Take as pulled' }).click();
  await expect(third).toContainText('taken as pulled');
  await expect(page.getByRole('button', { name: /Marks on the pulled picture/ })).toBeVisible();
});

test('marks are asked for one by one, a tap places them, undo and redo go mark by mark', async ({ page }) => {
  await startPair(page);
  await step(page, 3).click();
  const asked = page.locator('.asking');
  await expect(asked).toContainText('where the middle of the rod leaves the chamber face');
  await touch(page, 'Released', 0.3, 0.5);
  await expect(asked).toContainText('the centre of the clevis pin');
  await touch(page, 'Released', 0.6, 0.5);
  await expect(asked).toContainText('the centre of the camshaft’s end');
  const marks = picture(page, 'Released').getByRole('button', { name: /Chamber face|Clevis pin/ });
  await expect(marks).toHaveCount(2);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(marks).toHaveCount(1);
  await expect(asked).toContainText('the centre of the clevis pin');
  await page.keyboard.press('Control+z');
  await expect(marks).toHaveCount(0);
  await page.getByRole('button', { name: 'Redo' }).click();
  await page.keyboard.press('Control+Shift+z');
  await expect(marks).toHaveCount(2);
});

test('a reading is typed once, the next ones are proposed', { tag: '@phone' }, async ({ page }) => {
  await startPair(page);
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).check();
  await step(page, 3).click();
  await touch(page, 'Released', 0.25, 0.5);
  await touch(page, 'Released', 0.7, 0.5);
  const asked = page.locator('.asking');
  await expect(asked).toContainText('Mark 2 in on the tape');
  await page.getByRole('textbox', { name: 'Reading' }).fill('4');
  await touch(page, 'Released', 0.4, 0.6);
  await expect(asked).toContainText('Mark 5 in on the tape');
  await touch(page, 'Released', 0.5, 0.6);
  await expect(asked).toContainText('Mark 6 in on the tape');
  await page.getByRole('textbox', { name: 'Reading' }).fill('6 1/3');
  await expect(page.getByText(/No tape has 3ths/)).toBeVisible();
});

// Limits: 49 CFR 393.47(e)(1), clamp-type chambers, type 20: 1 3/4 in standard, 2 in long stroke.
test('the limit follows from the chamber, in the unit that was chosen', { tag: '@desk' }, async ({
  page,
}) => {
  await startPair(page);
  await chooseClampType(page, '20');
  const limit = titleBlock(page).getByText('Adjustment limit').locator('..');
  await expect(limit).toContainText('1 3/4 in');
  const dimensions = page.getByRole('combobox', { name: 'Dimensions in' });
  await dimensions.selectOption({ label: 'decimal inches' });
  await expect(limit).toContainText('1.750 in');
  await dimensions.selectOption({ label: 'millimetres' });
  await expect(limit).toContainText('44.5 mm');
  await page.getByRole('radio', { name: /Long stroke/ }).check();
  await expect(limit).toContainText('50.8 mm');
  await page.reload();
  await expect(limit).toContainText('50.8 mm');
});

test('what was seen of the over-stroke mark is kept with its frame and stands beside the finding', {
  tag: '@desk',
}, async ({ page }) => {
  await startPair(page);
  await step(page, 6).click();
  const applied = page.getByRole('group', { name: 'Applied picture' });
  await applied.getByRole('radio', { name: 'Seen', exact: true }).check();
  await expect(titleBlock(page)).toContainText('Over-stroke mark seen, applied');
  await applied.getByRole('button', { name: 'Frame the place on the picture' }).click();
  const region = picture(page, 'Applied');
  await region.scrollIntoViewIfNeeded();
  const box = await region.boundingBox();
  if (!box) throw new Error('the picture is not there');
  await page.mouse.move(box.x + box.width * 0.3, box.y + box.height * 0.45);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.55, { steps: 5 });
  await page.mouse.up();
  await expect(applied.getByRole('button', { name: 'Frame the place anew' })).toBeVisible();
  await page.reload();
  await expect(applied.getByRole('radio', { name: 'Seen', exact: true })).toBeChecked();
  await expect(applied.getByRole('button', { name: 'Frame the place anew' })).toBeVisible();
});

test('a kind of chamber alone gives no limit: nothing is assumed', { tag: '@desk' }, async ({ page }) => {
  await startPair(page);
  await step(page, 5).click();
  await page.getByRole('radio', { name: 'Clamp band' }).check();
  await expect(titleBlock(page).getByText('Adjustment limit').locator('..')).toContainText('not yet');
});

test('the same work can be done by keyboard alone', { tag: '@desk' }, async ({ page }) => {
  await startPair(page);
  await step(page, 2).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).focus();
  await page.keyboard.press('Space');
  await expect(page.getByRole('checkbox', { name: /zero sits on the chamber face/ })).toBeVisible();
  await page.getByRole('button', { name: /^Next:/ }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Marks on the released picture' })).toBeVisible();
});
