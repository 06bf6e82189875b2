/**
 * What hand marks of a careful person come to: the demo's photo pair marked by mouse at about one screen pixel for each pixel of
 * the picture, every point off its truth by a seeded normal error of 1 px. The stated uncertainty must hold the truth and be
 * small enough to be of use: 1/16 in with tape and band. With the band alone: tests/measurement/hand-marks.test.ts.
 */
import { expect, type Page, test } from '@playwright/test';
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import { finding, openDemo } from './main-job-finding.ts';
import { type Px, type Truth, type TruthView, truthOf, viewOf } from './main-job-truth.ts';
import { chooseClampType, picture, step } from './shell-start.ts';

test.setTimeout(180_000);

const STATES = ['Released', 'Applied'] as const;
type State = (typeof STATES)[number];

/** A wheel turn scales the picture by exp(-0.0016 turn), by a factor of two at most. */
const TURN_FOR_E = 1 / 0.0016;
const MOST_AT_ONCE = 0.65;

type Place = { readonly view: TruthView; readonly state: State; readonly px: Px };

async function click(page: Page, { view, state, px: [u, v] }: Place, noise: Draw) {
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

async function markAll(page: Page, truth: Truth, state: State, noise: Draw): Promise<number> {
  await step(page, state === 'Released' ? 3 : 4).click();
  const view = viewOf(truth, state === 'Released' ? 'released' : 'applied');
  const { points } = view;
  let placed = 0;
  const put = async (kind: RegExp | null, px: Px) => {
    if (kind) await ask(page, kind);
    await click(page, { view, state, px }, noise);
    placed++;
  };
  await put(/^Chamber face/, points.chamberFace.px);
  await put(/^Clevis pin/, points.clevisPin.px);
  await put(/^Camshaft end/, points.camshaftEnd.px);
  for (const inches of [1, 3, 5, 7, 9, 11]) {
    const graduation = points.tapeGraduations?.find((each) => each.inches === inches);
    if (!graduation) throw new Error(`${inches} in cannot be seen`);
    await ask(page, /^Tape graduation/);
    await page.getByRole('textbox', { name: 'Reading', exact: true }).fill(`${inches}`);
    await put(null, graduation.px);
  }
  for (const { px, visible } of points.clampBand) if (visible) await put(/^Clamp band/, px);
  for (const point of points.rodLine) await put(/^Rod line/, point.px);
  return placed;
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
  const noise = drawFrom(20260512);
  for (const state of STATES) expect(await markAll(page, truth, state, noise)).toBeGreaterThan(15);
  const { strokeMm, UMm } = await finding(page);
  expect(Math.abs(strokeMm - truth.strokeMm)).toBeLessThanOrEqual(UMm);
  expect(UMm).toBeLessThanOrEqual(25.4 / 16 + 0.05);
  expect(UMm).toBeGreaterThan(0.3);
});
