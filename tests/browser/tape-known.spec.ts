/**
 * A tape without numerals that does not begin at the chamber's face: on the first picture two graduations are marked, on the second one, since
 * then it is known how the tape lies.
 */
import { expect, type Page, test } from '@playwright/test';
import type { Point } from '../../src/vision/point.ts';
import { type TapePicture, tapePicture } from '../vision/tape-picture.ts';
import { grayJpeg } from './gray-jpeg.ts';
import { mark } from './main-job-marking.ts';
import { choose, picture, step } from './shell-start.ts';

test.setTimeout(120_000);

const SIZE = { widthPx: 1200, heightPx: 900 };
const [LEFT_PX, TOP_PX] = [270, 400];
const STATES = ['Released', 'Applied'] as const;
type State = (typeof STATES)[number];

/** Held anew: nearer, seen from another side. */
const TAPES: Readonly<Record<State, TapePicture>> = {
  Released: tapePicture(),
  Applied: tapePicture({
    shown: [
      [30, 70],
      [632, 84],
      [631, 48],
      [31, 24],
    ],
  }),
};
/** At the face, inches, and at the pin. */
const FACE = { Released: 3, Applied: 3.3 } as const;
const PIN = { Released: 9.5, Applied: 8 } as const;

const at = (state: State, inches: number, acrossMm: number): Point => {
  const [x, y] = TAPES[state].placeOf(inches, acrossMm);
  return [x + LEFT_PX, y + TOP_PX];
};

test('on the second picture one graduation names a tape that does not begin at the face', {
  tag: '@phone',
}, async ({ page }) => {
  await page.goto('/');
  const files = [];
  for (const state of STATES) {
    const on = { leftPx: LEFT_PX, topPx: TOP_PX, ...SIZE };
    const buffer = await grayJpeg(page, TAPES[state].gray, on);
    files.push({ name: `${state}.jpg`, mimeType: 'image/jpeg', buffer });
  }
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await choose(page, 'I have read this', files);
  await page.getByRole('button', { name: /^Tape along the rod in both/ }).click();
  const found = page.getByRole('region', { name: 'Found in this picture' });
  const name = async (state: State, inches: number) => {
    await page.getByRole('textbox', { name: 'Reading', exact: true }).fill(`${inches}`);
    await mark(page, state, SIZE, at(state, inches, 2));
  };
  for (const state of STATES) {
    await mark(page, state, SIZE, at(state, FACE[state], -6));
    await mark(page, state, SIZE, at(state, PIN[state], -6));
    await expect(found).toContainText('Tape seen, a dot on each inch', { timeout: 60_000 });
    await name(state, 5);
    if (state === 'Released') {
      // By this one the tape would begin before the face, or the strokes are others.
      await expect(found.getByText('graduations found')).toHaveCount(0);
      await name(state, 11);
    }
    const taken = state === 'Released' ? 2 : 1;
    await expect(found).toContainText(new RegExp(`\\d+ graduations found, .* in place of your ${taken}\\.`), {
      timeout: 60_000,
    });
    await page.screenshot({ path: test.info().outputPath(`${state}.png`) });
    await page.getByRole('button', { name: /^Take all/ }).click();
  }
  for (const state of STATES) await expectGraduations(page, state);
});

/** Marks say what they read and where they are. */
async function expectGraduations(page: Page, state: State): Promise<void> {
  await step(page, state === 'Released' ? 3 : 4).click();
  const marks = picture(page, state).getByRole('button', { name: /^\d+ in.*\. x / });
  await expect.poll(() => marks.count()).toBeGreaterThan(6);
  const labels = await marks.evaluateAll((all) => all.map((each) => each.getAttribute('aria-label') ?? ''));
  for (const label of labels) {
    const [, inches, x, y] = (/^(\d+) in\b.*x (-?[\d.]+), y (-?[\d.]+) px/.exec(label) ?? []).map(Number);
    const [tx, ty] = at(state, inches ?? Number.NaN, 4);
    expect(Math.hypot((x ?? Number.NaN) - tx, (y ?? Number.NaN) - ty), label).toBeLessThan(12);
  }
}
