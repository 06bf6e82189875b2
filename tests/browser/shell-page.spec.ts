/** The page itself: its size, its work without a network, its accessibility, its room on a phone. */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { recordText } from '../../src/record/save-record.ts';
import { axe } from './axe.ts';
import { openPair, pairRecord, tapePair } from './prepared-pair.ts';
import { choose, chooseClampType, openWithoutNetwork, startPair, step, touch } from './shell-start.ts';

test('the first view loads less than 200 kB of script, gzipped, and none of the decoders', {
  tag: '@desk',
}, async ({ page }) => {
  const scripts: { readonly address: string; readonly bytes: number }[] = [];
  page.on('response', async (response) => {
    if (response.request().resourceType() !== 'script' || response.request().serviceWorker()) return;
    scripts.push({ address: response.url(), bytes: gzipSync(await response.body()).length });
  });
  await page.goto('/');
  await expect(page.getByRole('button', { name: 'Start with pictures' })).toBeVisible();
  await page.waitForLoadState('networkidle');
  expect(scripts.length).toBeGreaterThan(0);
  const bytes = scripts.reduce((sum, script) => sum + script.bytes, 0);
  expect(bytes).toBeGreaterThan(20_000);
  expect(bytes).toBeLessThan(200_000);
  expect(scripts.filter(({ address }) => /opencv|heif|clip-/.test(address))).toEqual([]);
  const isFetched = (screen: string) => scripts.some(({ address }) => address.includes(screen));
  const behind = ['WorkScreen', 'WheelEndScreen', 'InspectionScreen', 'CameraScreen', 'RecheckScreen'];
  expect(behind.filter(isFetched)).toEqual([]);
  // As a hand goes to a way in, what is behind it is fetched.
  await page.getByRole('button', { name: 'Start an inspection' }).focus();
  await expect.poll(() => behind.filter(isFetched)).toEqual(behind);
});

test('the licences of all that the app is built of lie beside it', { tag: '@desk' }, async ({ request }) => {
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
  const listed = await (await request.get('/licences.md')).text();
  const named = {
    '@opencvjs/web': ['opencv', 'Apache License'],
    'libheif-js': ['libheif', 'LESSER GENERAL PUBLIC'],
  };
  for (const name of Object.keys(dependencies).filter((each) => !(each in named)))
    expect(listed).toContain(`## ${name} - `);
  for (const [file, heading] of Object.values(named))
    expect(await (await request.get(`/licence-${file}.txt`)).text()).toContain(heading);
});

test.describe('without a network', () => {
  test.use({ serviceWorkers: 'allow' });

  test('after one visit the page opens and works without a network', { tag: '@phone' }, async ({ page }) => {
    await openWithoutNetwork(page);
    await page.reload();
    await startPair(page);
    await step(page, 3).click();
    await touch(page, 'Released', 0.3, 0.5);
    await expect(page.locator('.asking')).toContainText('clevis pin');
  });
});

async function expectNoFaults(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const rules = axe(page);
    // Nothing but colours differs between the two.
    if (colorScheme === 'dark') rules.withRules(['color-contrast']);
    const { violations } = await rules.analyze();
    const told = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
    expect(told, colorScheme).toEqual([]);
  }
}

test('every screen passes the accessibility check, light and dark', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expectNoFaults(page);
  await startPair(page);
  await expectNoFaults(page);
  await step(page, 2).click();
  for (const box of await page.getByRole('checkbox').all()) await box.check();
  await expectNoFaults(page);
  await step(page, 3).click();
  await touch(page, 'Released', 0.3, 0.5);
  await expectNoFaults(page);
  await chooseClampType(page, '20');
  await expectNoFaults(page);
  await step(page, 6).click();
  await expectNoFaults(page);
  await step(page, 7).click();
  await expectNoFaults(page);
  await page.getByRole('button', { name: 'Cautions' }).click();
  await expectNoFaults(page);
  await page.getByRole('button', { name: 'I have read this' }).click();
  await page.getByRole('button', { name: /^Axle 1, left$/ }).click();
  await openAllParts(page);
  await expectNoFaults(page);
  await page.getByRole('button', { name: 'Vehicle', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Conditions' })).toBeVisible();
  await openAllParts(page);
  await expectNoFaults(page);
});

test('a record without its pictures, and what is found in them, pass the accessibility check', {
  tag: '@phone',
}, async ({ page }) => {
  const pair = tapePair();
  await page.goto('/');
  const buffer = Buffer.from(recordText(pairRecord(pair)));
  await choose(page, 'Open a saved record', [{ name: 'gt-14.json', mimeType: 'application/json', buffer }]);
  await expect(page.getByRole('region', { name: 'Pictures to bring back' })).toBeVisible();
  await expectNoFaults(page);
  await choose(page, 'Choose the files', pair.pictures);
  await step(page, 3).click();
  await expect(page.getByRole('region', { name: 'Found in this picture' })).toContainText('looking …');
  await expectNoFaults(page);
});

for (const widthPx of [390, 320])
  test(`nothing sticks out sideways, and every target has room for a glove, ${widthPx} wide`, {
    tag: '@phone',
  }, async ({ page }) => {
    await page.setViewportSize({ width: widthPx, height: 844 });
    await startPair(page);
    for (const number of [1, 2, 3, 4, 5, 6, 7]) {
      await step(page, number).click();
      await expectRoom(page, `step ${number}`);
    }
    await page.getByRole('button', { name: /^Axle 1, left$/ }).click();
    await page.getByRole('button', { name: 'Enter a tape reading' }).first().click();
    await page.getByLabel('Reading, released').fill('6');
    await page.getByLabel('Reading, applied').fill('7 1/2');
    await page.getByRole('button', { name: 'Note the reading' }).click();
    await openAllParts(page);
    await page.getByLabel('Notes', { exact: true }).fill('The clevis was greased. The boot is torn.');
    await expectRoom(page, 'wheel end');
    await page.getByRole('button', { name: 'Vehicle', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Conditions' })).toBeVisible();
    await openAllParts(page);
    await expectRoom(page, 'vehicle');
  });

test('on a phone what keys bring into sight does not lie under the way on, nor do four found lines', {
  tag: '@phone',
}, async ({ page }) => {
  await openPair(page, tapePair());
  await step(page, 3).click();
  const foot = page.locator('.step-next');
  await expect(foot).toContainText('±');
  const found = page.getByRole('region', { name: 'Found in this picture' });
  await expect(found).not.toContainText('looking …', { timeout: 30_000 });
  await page.evaluate(() => scrollTo(0, 0));
  const bottomOf = (place: Locator) => place.evaluate((element) => element.getBoundingClientRect().bottom);
  const top = await foot.evaluate((element) => element.getBoundingClientRect().top);
  const lines = found.getByRole('listitem').filter({ hasText: ' found' });
  await expect(lines).toHaveCount(4);
  for (const line of await lines.all()) expect(await bottomOf(line)).toBeLessThanOrEqual(top);

  for (const control of await page.locator('.mark-list button').all()) {
    await page.evaluate(() => scrollTo(0, 0));
    await control.focus();
    const { bottom, under } = await control.evaluate((element) => ({
      bottom: element.getBoundingClientRect().bottom,
      under: document.querySelector('.step-next')?.getBoundingClientRect().top ?? 0,
    }));
    expect(bottom).toBeLessThanOrEqual(under);
  }
});

test('a long stroke keeps its unit, on a narrow phone and on one on its side', { tag: '@phone' }, async ({
  page,
}) => {
  const pair = tapePair();
  await openPair(page, { ...pair, marksOf: (view) => pair.marksOf(view).slice(0, 3) });
  await step(page, 5).click();
  await page.getByRole('combobox', { name: 'Type and outside diameter' }).selectOption('36');
  const [cell, limits] = [page.locator('.results .cell').first(), page.locator('.results .limit')];
  await expect(limits).toHaveText([/^2 1\/4 in$/, /^or 2 1\/2 in$/]);
  await expect(cell).toHaveText(/\d \d+\/16 ± \d \d+\/16 in$/);
  for (const size of [
    { width: 844, height: 390 },
    { width: 320, height: 568 },
  ]) {
    await page.setViewportSize(size);
    const roomPx = await cell.evaluate((element) => {
      const text = document.createRange();
      text.selectNodeContents(element.querySelector('dd') ?? element);
      return element.getBoundingClientRect().right - text.getBoundingClientRect().right;
    });
    expect(roomPx).toBeGreaterThan(0);
  }
});

test('the keys go through the head of the work as it is read', async ({ page }) => {
  await startPair(page);
  const boxes = await page
    .locator('.work > header button')
    .evaluateAll((buttons) =>
      buttons.map((button) => button.getBoundingClientRect()).map(({ left, top }) => ({ left, top })),
    );
  expect(boxes.length).toBe(12);
  expect(boxes).toEqual(boxes.toSorted((a, b) => a.top - b.top || a.left - b.left));
});

async function expectRoom(page: Page, where: string): Promise<void> {
  // Where something sticks out a phone makes its window wider: it is held against the screen.
  const screenPx = page.viewportSize()?.width ?? 0;
  expect(await page.evaluate(() => document.documentElement.scrollWidth), where).toBe(screenPx);
  // Seven steps share the narrowest screen.
  const leastWidthPx = screenPx < 336 ? 44 : 48;
  const small = await page.evaluate(
    (leastPx) =>
      [...document.querySelectorAll('button, select, input[type=text], label.choice, summary')]
        .filter((each) => each.getClientRects().length > 0 && !each.closest('.viewer-stage'))
        .filter((each) => {
          const { width, height } = each.getBoundingClientRect();
          return width < leastPx - 0.1 || height < 47.9;
        })
        .map((each) => each.outerHTML.slice(0, 120)),
    leastWidthPx,
  );
  expect(small, where).toEqual([]);
}

async function openAllParts(page: Page): Promise<void> {
  await page.locator('details').first().waitFor();
  await page.locator('details').evaluateAll((all) => {
    for (const part of all) part.setAttribute('open', '');
  });
}
