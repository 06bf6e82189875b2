/** Tie points found in both pictures of the demo, by OpenCV in its worker: placed as marks, kept, taken back in one step. */
import { expect, type Page, test } from '@playwright/test';
import { mmFromInches } from '../../src/basics/units.ts';
import { NO_REFERENCES } from '../../src/references/reference.ts';
import { finding } from './main-job-finding.ts';
import { mark } from './main-job-marking.ts';
import { type TruthView, truthOf, viewOf } from './main-job-truth.ts';
import { openPair, pairPictures, placed } from './prepared-pair.ts';
import { picture, startPair, step } from './shell-start.ts';

test.setTimeout(150_000);

/** As a mouse places a mark close by. */
const SIGMA_PX = 0.5;

const STATES = ['Released', 'Applied'] as const;
type State = (typeof STATES)[number];
const begin = (page: Page) => page.getByRole('button', { name: 'Find tie points in both pictures' });
const panel = (page: Page) => page.getByRole('region', { name: 'Tie points by search' });
const tieMarks = (page: Page, state: State) =>
  picture(page, state).getByRole('button', { name: /Tie point a\d+/ });

async function show(page: Page, state: State): Promise<void> {
  const turn = page.getByRole('button', { name: state, exact: true });
  if (await turn.isVisible()) await turn.click();
}

async function places(page: Page, state: State): Promise<Map<string, readonly [number, number]>> {
  await show(page, state);
  await expect(tieMarks(page, state).first()).toBeVisible();
  const labels = await tieMarks(page, state).evaluateAll((all) =>
    all.map((each) => each.getAttribute('aria-label') ?? ''),
  );
  return new Map(
    labels.map((label) => {
      const [, name = '', x, y] = /Tie point (a\d+).* x (-?[\d.]+), y (-?[\d.]+) px/.exec(label) ?? [];
      return [name, [Number(x), Number(y)]];
    }),
  );
}

/** How far a place is from where the true cameras let it be, in pixels of the second picture. */
function missPx(one: TruthView, other: TruthView, first: readonly number[], second: readonly number[]) {
  const at = (depthMm: number): readonly [number, number] => {
    const inCamera = [
      (((first[0] ?? 0) - one.principalPx[0]) / one.focalPx) * depthMm,
      (((first[1] ?? 0) - one.principalPx[1]) / one.focalPx) * depthMm,
      depthMm,
    ];
    const less = one.cameraFromChamber.map((row, i) => (inCamera[i] ?? 0) - row[3]);
    const chamber = [0, 1, 2].map((axis) =>
      one.cameraFromChamber.reduce((sum, row, i) => sum + (row[axis] ?? 0) * (less[i] ?? 0), 0),
    );
    const [x = 0, y = 0, z = 1] = other.cameraFromChamber.map(
      (row) => row[3] + [0, 1, 2].reduce((sum, axis) => sum + (row[axis] ?? 0) * (chamber[axis] ?? 0), 0),
    );
    return [other.principalPx[0] + (other.focalPx * x) / z, other.principalPx[1] + (other.focalPx * y) / z];
  };
  const [a, b] = [at(500), at(1500)];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  return Math.abs(dx * ((second[1] ?? 0) - a[1]) - dy * ((second[0] ?? 0) - a[0])) / Math.hypot(dx, dy);
}

test('tie points are found in a hand-held pair, lie true, are kept, and one undo takes them back', {
  tag: '@desk',
}, async ({ page }) => {
  const truth = truthOf('pair-band');
  const [released, applied] = [viewOf(truth, 'released'), viewOf(truth, 'applied')];
  // The pin of the applied picture is still to be marked.
  await openPair(page, {
    set: 'pair-band',
    pictures: pairPictures('pair-band'),
    references: { ...NO_REFERENCES, clampBand: { diameterMm: mmFromInches(8 + 3 / 32), uDiameterMm: 1 } },
    marksOf: ({ state, points: { chamberFace, clevisPin, clampBand, camshaftEnd } }) => {
      const rim = clampBand.filter(({ visible }) => visible);
      const band = [0, 1, 2, 3, 4, 5].map((i) => rim[Math.floor((i * rim.length) / 6)] ?? chamberFace);
      return [
        placed(state, 'chamber-face', chamberFace.px, SIGMA_PX),
        ...(state === 'released' ? [placed(state, 'clevis-pin', clevisPin.px, SIGMA_PX)] : []),
        placed(state, 'camshaft-end', camshaftEnd.px, SIGMA_PX),
        ...band.map(({ px }, i) => placed(state, 'clamp-band', px, SIGMA_PX, i)),
      ];
    },
  });
  await step(page, 4).click();
  await expect(begin(page)).toBeDisabled();
  await expect(panel(page)).toContainText('Mark chamber face and clevis pin on both pictures first.');
  await mark(page, 'Applied', applied, applied.points.clevisPin.px);
  await begin(page).click();
  await expect(panel(page)).toContainText(/\d+ tie points found and marked/, { timeout: 90_000 });
  const [there, here] = [await places(page, 'Released'), await places(page, 'Applied')];
  expect(here.size).toBeGreaterThanOrEqual(12);
  expect([...there.keys()]).toEqual([...here.keys()]);
  const misses = [...here].map(([name, at]) => missPx(released, applied, there.get(name) ?? [], at));
  expect(Math.max(...misses)).toBeLessThan(1.5);

  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(tieMarks(page, 'Applied')).toHaveCount(0);
  await expect(begin(page)).toBeEnabled();
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  await expect(tieMarks(page, 'Applied')).toHaveCount(here.size);

  await step(page, 6).click();
  for (const state of STATES)
    await page
      .getByRole('group', { name: `${state} picture` })
      .getByRole('radio', { name: 'Not seen', exact: true })
      .check();
  const found = await finding(page);
  expect(Math.abs(found.strokeMm - truth.strokeMm)).toBeLessThanOrEqual(found.UMm);

  await page.reload();
  expect(await finding(page)).toEqual(found);
  await step(page, 4).click();
  expect((await places(page, 'Applied')).size).toBe(here.size);
  await expect(page.getByRole('button', { name: 'Find them anew' })).toBeEnabled();
});

test('where pictures show nothing in common it is said, and nothing is marked', { tag: '@phone' }, async ({
  page,
}) => {
  await startPair(page);
  for (const state of STATES) {
    await step(page, state === 'Released' ? 3 : 4).click();
    const size = { widthPx: 1200, heightPx: 900 };
    await mark(page, state, size, [300, 300]);
    await mark(page, state, size, [450, 300]);
  }
  await begin(page).click();
  await expect(panel(page)).toContainText('No tie points set: six are needed', { timeout: 90_000 });
  await expect(tieMarks(page, 'Applied')).toHaveCount(0);
});
