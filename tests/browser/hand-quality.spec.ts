/**
 * What hand marks of a careful person come to: the demo's photo pairs marked by mouse at about one screen pixel for each pixel of
 * the picture, every point off its truth by a seeded normal error of 1 px. The stated uncertainty must hold the truth and be
 * small enough to be of use: 1/16 in with tape and band, 3/32 in with the band alone.
 */
import { expect, type Page, test } from '@playwright/test';
import { drawFrom } from '../../src/basics/random.ts';
import { finding, openDemo } from './main-job-finding.ts';
import type { Px } from './main-job-marking.ts';
import { type Truth, type TruthView, truthOf, viewOf } from './main-job-truth.ts';
import { chooseClampType, picture, step } from './shell-start.ts';

test.setTimeout(240_000);

const STATES = ['Released', 'Applied'] as const;
type State = (typeof STATES)[number];

/** A wheel turn scales the picture by exp(-0.0016 turn), by a factor of two at most. */
const TURN_FOR_E = 1 / 0.0016;
const MOST_AT_ONCE = 0.65;
const noise = drawFrom(20260512);

async function click(page: Page, state: State, view: TruthView, [u, v]: readonly [number, number]) {
  const region = picture(page, state);
  await region.getByRole('button', { name: 'Fit the whole picture' }).click();
  const box = await region.locator('.viewer-stage').boundingBox();
  if (!box) throw new Error('the picture is not there');
  const fitted = Math.min(box.width / view.widthPx, box.height / view.heightPx);
  const [xPx, yPx] = [u + noise.normal(0, 1), v + noise.normal(0, 1)];
  const at = {
    x: Math.round(box.x + (box.width - fitted * view.widthPx) / 2 + fitted * xPx),
    y: Math.round(box.y + (box.height - fitted * view.heightPx) / 2 + fitted * yPx),
  };
  await page.mouse.move(at.x, at.y);
  const closer = -Math.log(fitted);
  const turns = Math.ceil(closer / MOST_AT_ONCE);
  for (let i = 0; i < turns; i++) await page.mouse.wheel(0, (-closer / turns) * TURN_FOR_E);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  // The picture's pixel under the pointer stayed there; the wanted one is now as many screen pixels off as pixels.
  const under = {
    xPx: (at.x - box.x - (box.width - fitted * view.widthPx) / 2) / fitted,
    yPx: (at.y - box.y - (box.height - fitted * view.heightPx) / 2) / fitted,
  };
  await page.mouse.click(at.x + Math.round(xPx - under.xPx), at.y + Math.round(yPx - under.yPx));
}

/** Makes a kind of mark the one to place, if it is not yet. */
async function ask(page: Page, kind: RegExp): Promise<void> {
  const line = page.locator('.mark-list').getByRole('button', { name: kind });
  if ((await line.getAttribute('aria-pressed')) !== 'true') await line.click();
}

async function markAll(page: Page, truth: Truth, state: State, withTape: boolean): Promise<number> {
  await step(page, state === 'Released' ? 3 : 4).click();
  const view = viewOf(truth, state === 'Released' ? 'released' : 'applied');
  const { points } = view;
  const readings = [1, 3, 5, 7, 9, 11];
  let placed = 0;
  const put = async (kind: RegExp | null, px: readonly [number, number]) => {
    if (kind) await ask(page, kind);
    await click(page, state, view, px);
    placed++;
  };
  await put(/^Chamber face/, points.chamberFace.px);
  await put(/^Clevis pin/, points.clevisPin.px);
  await put(/^Camshaft end/, points.camshaftEnd.px);
  for (const inches of withTape ? readings : []) {
    const graduation = points.tapeGraduations?.find((each) => each.inches === inches);
    if (!graduation) throw new Error(`${inches} in cannot be seen`);
    await ask(page, /^Tape graduation/);
    await page.getByRole('textbox', { name: 'Reading', exact: true }).fill(`${inches}`);
    await put(null, graduation.px);
  }
  for (const px of rimPoints(view)) await put(/^Clamp band/, px);
  for (const point of points.rodLine) await put(/^Rod line/, point.px);
  return placed;
}

/** The rim's visible points of the truth, 15 degrees apart, and those half way between neighbours: projected by the truth's camera. */
function rimPoints({ points, focalPx, principalPx, cameraFromChamber }: TruthView): readonly Px[] {
  const seen = points.clampBand.filter(({ visible }) => visible);
  const between = seen.flatMap((point) => {
    const next = seen.find(({ angleDeg }) => angleDeg === (point.angleDeg + 15) % 360);
    if (!next) return [];
    const [x, y, z] = [0, 1, 2].map((i) => ((point.mm[i] ?? 0) + (next.mm[i] ?? 0)) / 2) as [
      number,
      number,
      number,
    ];
    // The middle of a chord, moved out to the circle.
    const out = 1 / Math.cos((7.5 * Math.PI) / 180);
    const at = cameraFromChamber.map(([a, b, c, t]) => a * x + b * y * out + c * z * out + t) as [
      number,
      number,
      number,
    ];
    return [
      [principalPx[0] + (focalPx * at[0]) / at[2], principalPx[1] + (focalPx * at[1]) / at[2]] as const,
    ];
  });
  return [...seen.map(({ px }) => px), ...between];
}

test('photo pair with tape and band: within U95, and U95 within 1/16 in', async ({ page }) => {
  const truth = truthOf('pair-tape');
  await openDemo(page, 'Photos with a tape');
  await expect(page.getByText('taken as applied')).toBeVisible();
  await chooseClampType(page, '30');
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).check();
  await page.getByRole('checkbox', { name: /zero sits on the chamber face/ }).check();
  await page.getByRole('checkbox', { name: /Clamp band of the chamber/ }).check();
  for (const state of STATES) expect(await markAll(page, truth, state, true)).toBeGreaterThan(15);
  const { strokeMm, UMm } = await finding(page);
  expect(Math.abs(strokeMm - truth.strokeMm)).toBeLessThanOrEqual(UMm);
  expect(UMm).toBeLessThanOrEqual(25.4 / 16 + 0.05);
  expect(UMm).toBeGreaterThan(0.3);
});

test('photo pair with the clamp band alone: within U95, and U95 within 3/32 in', async ({ page }) => {
  const truth = truthOf('pair-band');
  await openDemo(page, 'Photos, clamp band');
  await expect(page.getByText('taken as applied')).toBeVisible();
  await chooseClampType(page, '30');
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Clamp band of the chamber/ }).check();
  for (const state of STATES) expect(await markAll(page, truth, state, false)).toBeGreaterThan(12);
  const { strokeMm, UMm } = await finding(page);
  expect(Math.abs(strokeMm - truth.strokeMm)).toBeLessThanOrEqual(UMm);
  expect(UMm).toBeLessThanOrEqual((25.4 * 3) / 32);
  expect(UMm).toBeGreaterThan(0.3);
});
