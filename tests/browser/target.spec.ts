/** The printed target: printed from the app, found in both pictures by OpenCV in its worker, under the page's strict policy. */
import { expect, type Page, test } from '@playwright/test';
import { choose, openWithoutNetwork, picture, startPair, step } from './shell-start.ts';
import { type TargetPhoto, targetPhoto } from './target-photos.ts';

const sights = (page: Page) => page.getByRole('list', { name: 'What was found in the pictures' });
const corners = (page: Page, state: 'Released' | 'Applied') =>
  picture(page, state).getByRole('button', { name: /Corner of the printed target/ });

type Pair = { readonly released: TargetPhoto; readonly applied: TargetPhoto };

/** On the applied picture the last marker is covered. */
async function startTargetPair(page: Page): Promise<Pair> {
  await page.goto('/');
  const released = await targetPhoto(page, 'released.jpg', [300, 420], { seed: 11 });
  const applied = await targetPhoto(page, 'applied.jpg', [340, 380], { seed: 12, turnDeg: 7, covered: [5] });
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await choose(page, 'I have read this', [released.file, applied.file]);
  await expect(page.getByText('taken as applied')).toBeVisible();
  return { released, applied };
}

async function chooseTarget(page: Page): Promise<void> {
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /^Printed target/ }).check();
}

async function expectFound(page: Page): Promise<void> {
  await expect(sights(page)).toContainText('Released picture: all 6 markers found.', { timeout: 60_000 });
  await expect(sights(page)).toContainText(
    'Applied picture: 5 of 6 markers found. Not found, counted from the left: 6.',
    { timeout: 60_000 },
  );
}

async function show(page: Page, state: 'Released' | 'Applied'): Promise<void> {
  const turn = page.getByRole('button', { name: state, exact: true });
  if (await turn.isVisible()) await turn.click();
}

/** Marks say where they are, to a tenth of a pixel. */
async function expectAtTruth(
  page: Page,
  state: 'Released' | 'Applied',
  photo: TargetPhoto,
  markers: number[],
) {
  await show(page, state);
  await expect(corners(page, state)).toHaveCount(4 * markers.length);
  const labels = await corners(page, state).evaluateAll((all) =>
    all.map((each) => each.getAttribute('aria-label') ?? ''),
  );
  const places = labels.map((label) =>
    (/x (-?[\d.]+), y (-?[\d.]+) px/.exec(label) ?? []).slice(1).map(Number),
  );
  const truth = markers.flatMap((marker) => [0, 1, 2, 3].map((corner) => photo.corner(marker, corner)));
  expect(places).toHaveLength(truth.length);
  const away = truth.map(([x, y]) =>
    Math.min(...places.map(([px = NaN, py = NaN]) => Math.hypot(px - x, py - y))),
  );
  expect(Math.max(...away)).toBeLessThan(0.2);
}

test('the target is found in both pictures, its corners are marked where they are, and a reload keeps them', {
  tag: '@desk',
}, async ({ page }) => {
  const pair = await startTargetPair(page);
  await chooseTarget(page);
  await expectFound(page);
  await expectAtTruth(page, 'Released', pair.released, [0, 1, 2, 3, 4, 5]);
  await expectAtTruth(page, 'Applied', pair.applied, [0, 1, 2, 3, 4]);
  await page.getByRole('textbox', { name: /Its check line measures/ }).fill('99.5 mm');
  await page.getByRole('checkbox', { name: /The strip lies on the end of the clevis pin/ }).check();

  await page.reload();
  await expectFound(page);
  await expect(page.getByRole('textbox', { name: /Its check line measures/ })).toHaveValue(
    /^(99\.5|3\.917|3 11\/12|3 \d+\/\d+)/,
  );
  await expect(page.getByRole('checkbox', { name: /The strip lies on the end/ })).toBeChecked();
  await expectAtTruth(page, 'Released', pair.released, [0, 1, 2, 3, 4, 5]);
});

test('nothing of OpenCV comes before the target is chosen, and the page itself still makes no code from text', {
  tag: '@desk',
}, async ({ page }) => {
  const brought: string[] = [];
  page.on('request', (request) => {
    if (/opencv|vision\.worker/.test(request.url()) && !request.serviceWorker()) brought.push(request.url());
  });
  await startTargetPair(page);
  expect(brought).toEqual([]);
  await chooseTarget(page);
  await expectFound(page);
  expect(brought.some((url) => url.endsWith('.wasm'))).toBe(true);
  // In a task of its own: what the test's own tool runs is let through.
  const refusal = await page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        setTimeout(() => {
          try {
            new Function('return 1')();
            resolve('made');
          } catch (thrown) {
            resolve(thrown instanceof Error ? thrown.name : 'thrown');
          }
        });
      }),
  );
  expect(refusal).toBe('EvalError');
});

test.describe('without a network', () => {
  test.use({ serviceWorkers: 'allow' });

  test('without a network the target is found as well, and its page for printing opens', {
    tag: '@phone',
  }, async ({ page, context }) => {
    await openWithoutNetwork(page);
    await startTargetPair(page);
    await chooseTarget(page);
    await expectFound(page);
    for (const paper of ['A4', 'US Letter']) {
      const [sheet] = await Promise.all([
        context.waitForEvent('page'),
        page.getByRole('link', { name: new RegExp(`^${paper}`) }).click(),
      ]);
      // 100 mm at 96 px per inch.
      const widthPx = await sheet
        .locator('#check-line')
        .evaluate((line) => line.getBoundingClientRect().width);
      expect(widthPx).toBeCloseTo((100 / 25.4) * 96, 0);
      await sheet.close();
    }
  });
});

test('where there is no target, what to do is said, and it can be searched again', { tag: '@phone' }, async ({
  page,
}) => {
  await startPair(page);
  await chooseTarget(page);
  await expect(sights(page)).toContainText('Released picture: the target was not found.', {
    timeout: 60_000,
  });
  await expect(sights(page)).toContainText('Applied picture: the target was not found.', { timeout: 60_000 });
  await expect(page.getByText('The strip must be in view whole')).toBeVisible();
  // A second search can be over before a poll sees it: the page itself notes that it was told of.
  const told = sights(page).evaluate(
    (list) =>
      new Promise<string>((tell) => {
        const watch = new MutationObserver(() => {
          if (!list.textContent?.includes('searching …')) return;
          watch.disconnect();
          tell(list.textContent);
        });
        watch.observe(list, { childList: true, subtree: true, characterData: true });
        list.setAttribute('data-watched', '');
      }),
  );
  await expect(sights(page)).toHaveAttribute('data-watched');
  await page.getByRole('button', { name: 'Search again' }).click();
  expect(await told).toContain('Applied picture');
  await expect(sights(page)).toContainText('Applied picture: the target was not found.', { timeout: 60_000 });
});
