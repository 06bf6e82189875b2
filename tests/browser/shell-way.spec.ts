/** Going from screen to screen: the browser's back button goes one up, and every screen and step is seen from its head. */
import { expect, type Page, test } from '@playwright/test';
import { startPair, step } from './shell-start.ts';

const heading = (page: Page, name: string) => page.getByRole('heading', { name, level: 1 });
const scrolled = (page: Page) => page.evaluate(() => Math.round(scrollY));

async function scrollTo(page: Page, y: number): Promise<void> {
  await page.evaluate((top) => window.scrollTo(0, top), y);
  await expect.poll(() => scrolled(page)).toBe(y);
}

test('the back button goes one screen up, also after a reload and after the page’s own buttons', {
  tag: '@phone',
}, async ({ page }) => {
  await startPair(page);
  const vehicle = page.getByRole('button', { name: 'Vehicle', exact: true });
  await page.goBack();
  await expect(heading(page, 'Axle 1, left')).toBeVisible();
  await page.goBack();
  await expect(heading(page, 'Unit not named')).toBeVisible();

  await page.getByRole('button', { name: /^Axle 1, left/ }).click();
  await page.reload();
  await expect(heading(page, 'Axle 1, left')).toBeVisible();
  await vehicle.click();
  await expect(heading(page, 'Unit not named')).toBeVisible();
  await page.goBack();
  await expect(heading(page, 'Strokewitness')).toBeVisible();

  // Nothing lies before it: forward goes nowhere, and what was entered is there.
  await page.goForward();
  await expect(heading(page, 'Strokewitness')).toBeVisible();
  await page.getByRole('button', { name: 'Calibrate a camera' }).click();
  await expect(heading(page, 'Camera')).toBeVisible();
  await page.goBack();
  await page.getByRole('button', { name: /^Unit not named/ }).click();
  await expect(page.getByRole('button', { name: /^Axle 1, left/ })).toContainText('Begun');
});

test('a screen opens at its head, and the one before it where it was left', { tag: '@phone' }, async ({
  page,
}) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start an inspection' }).click();
  await page.getByRole('button', { name: 'I have read this' }).click();
  await page.getByRole('button', { name: 'Add trailer axle' }).click();
  await page.getByRole('button', { name: 'Add trailer axle' }).click();
  const last = page.getByRole('button', { name: /^Axle 2, right/ });
  await scrollTo(page, 200);
  await last.click();
  await expect(heading(page, 'Axle 2, right')).toBeInViewport();
  expect(await scrolled(page)).toBe(0);
  await page.goBack();
  await expect(last).toBeVisible();
  await expect.poll(() => scrolled(page)).toBe(200);
});

test('the way on from the foot of a step leads to the head of the next, picture first', async ({ page }) => {
  await startPair(page);
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).check();
  const camera = page.getByRole('button', { name: 'Calibrate a camera' });
  await camera.scrollIntoViewIfNeeded();
  await page.getByRole('button', { name: 'Next: marks on the released picture' }).press('Enter');
  await expect(page.locator('.asking')).toBeInViewport();
  await expect(page.getByRole('region', { name: 'Released picture', exact: true })).toBeInViewport();
  expect(await scrolled(page)).toBe(0);
  expect(await page.locator('.step-body').evaluate((body) => body.scrollTop)).toBe(0);
});

test('a finding that is not there yet leads to the step that mends it', { tag: '@phone' }, async ({
  page,
}) => {
  await startPair(page);
  await step(page, 7).click();
  const panel = page.getByRole('region', { name: 'Finding' });
  await expect(panel).toContainText('Still to be marked on the released picture');
  await page.getByRole('button', { name: 'Go to marks on the released picture' }).click();
  await expect(page.locator('.asking')).toContainText('released picture');
  await expect(step(page, 3)).toHaveAttribute('aria-current', 'step');
});

test('on a phone the newest inspections stand before demo and files, the others a touch away', {
  tag: '@phone',
}, async ({ page }) => {
  await page.goto('/');
  for (let i = 0; i < 7; i++) {
    await page.getByRole('button', { name: 'Start an inspection' }).click();
    if (i === 0) await page.getByRole('button', { name: 'I have read this' }).click();
    await page.getByRole('textbox', { name: 'Unit' }).fill(`GT-${i + 1}`);
    await page.getByRole('button', { name: 'All inspections' }).click();
  }
  const listed = page.getByRole('button', { name: /^GT-\d/ });
  await expect(listed).toHaveCount(5);
  await expect(listed.first()).toContainText('GT-7');
  await expect(listed.first()).toBeInViewport();
  await page.getByRole('textbox', { name: /^Search/ }).fill('gt-1');
  await expect(listed).toHaveCount(1);
  await page.getByRole('textbox', { name: /^Search/ }).fill('');
  await page.getByRole('button', { name: 'Show all 7' }).click();
  await expect(listed).toHaveCount(7);
});

test('a phone on its side shows the picture, what is asked and the way on at once', {
  tag: '@phone',
}, async ({ page }) => {
  await startPair(page);
  await page.setViewportSize({ width: 844, height: 390 });
  await step(page, 3).click();
  await expect(page.locator('.asking')).toBeInViewport({ ratio: 1 });
  const shown = page.getByRole('region', { name: 'Released picture', exact: true });
  await expect(shown).toBeInViewport({ ratio: 0.99 });
  expect((await shown.boundingBox())?.height).toBeGreaterThan(250);
  await expect(page.getByRole('button', { name: 'Next: marks on the applied picture' })).toBeInViewport({
    ratio: 1,
  });
});
