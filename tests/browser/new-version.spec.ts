/** A new build is put on the server while somebody works with the old one. */
import { expect, type Page, test } from '@playwright/test';
import { leave, photo, step, touch } from './shell-start.ts';
import { startTwoBuilds, type TwoBuilds } from './two-builds.ts';

test.use({ serviceWorkers: 'allow' });

let builds: TwoBuilds;
test.beforeEach(async () => {
  builds = await startTwoBuilds();
});
test.afterEach(() => builds.stop());

const build = (page: Page) => page.evaluate(() => document.documentElement.dataset.build ?? 'first');

test('the work goes on with the old build, with a network and without, until the new one is taken', {
  tag: '@phone',
}, async ({ page, context }) => {
  await page.goto(builds.url);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  const files = [await photo(page, 'released.jpg', '#6a4b33'), await photo(page, 'applied.jpg', '#33506a')];
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await page.getByRole('button', { name: 'I have read this' }).click();
  await (await chooser).setFiles(files);
  await page.getByRole('textbox', { name: 'Unit' }).fill('GT-14');

  builds.deploySecond();
  const waits = () =>
    page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting != null);
  expect(await waits()).toBe(false);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect.poll(waits, { timeout: 30_000 }).toBe(true);

  await step(page, 3).click();
  await touch(page, 'Released', 0.3, 0.5);
  await expect(page.locator('.asking')).toContainText('clevis pin');
  await context.setOffline(true);
  await page.reload();
  await expect(page.locator('.asking')).toContainText('clevis pin');
  await touch(page, 'Released', 0.6, 0.5);
  await expect(page.locator('.asking')).toContainText('camshaft');
  expect(await build(page)).toBe('first');

  // Without a network as well: it was fetched before.
  await leave(page);
  await expect(page.getByText('A newer version of the program is here')).toBeVisible();
  await page.getByRole('button', { name: 'Use it now' }).click();
  await expect.poll(() => build(page).catch(() => 'none')).toBe('second');
  await expect(page.getByRole('button', { name: 'Use it now' })).toBeHidden();
  await page.getByRole('button', { name: /^GT-14/ }).click();
  await page.getByRole('button', { name: /^Axle 1, left/ }).click();
  await page.getByRole('button', { name: /Pictures and marks/ }).click();
  await step(page, 3).click();
  await expect(page.locator('.asking')).toContainText('camshaft');
});
