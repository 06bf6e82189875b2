/**
 * The whole way of a measurement (measure) on photographs of a real board, with a calibrated camera.
 *
 * Source   OpenCV's sample photographs left01 to left14 (Debian package opencv-doc 4.6.0), squares of 25 mm; camera profile from
 *          calibrateCamera of python3-opencv 4.6.0 on the same corners. board-strokes.ts says what the board stands for.
 * Not      pictures seen from directions more than 30 degrees apart with the tape alone: there U95 holds too seldom
 *          (docs/outside.md; `npx tsx tests/outside/board-table.ts` prints all 156 pairs).
 */
import { expect, test } from 'vitest';
import { type BoardMeasured, type BoardStroke, measureStroke, photographPairs } from './board-strokes.ts';

const pairs = photographPairs();
const nearby = pairs.filter(({ apartDeg }) => apartDeg < 20);

function summary(strokes: readonly BoardStroke[]) {
  const runs = strokes.map(measureStroke);
  const isHeld = ({ errorMm, U95Mm }: BoardMeasured): boolean => Math.abs(errorMm) <= U95Mm;
  const errors = runs.map(({ errorMm }) => Math.abs(errorMm)).sort((a, b) => a - b);
  return {
    runs,
    held: runs.filter(isHeld).length,
    medianMm: errors[Math.floor(errors.length / 2)] as number,
  };
}

const tapeAlone = summary(nearby.map((pair) => ({ ...pair, squares: 2, withTies: false })));

test(`tape alone, pictures less than 20 degrees apart, 50 mm: U95 holds ${tapeAlone.held} of ${tapeAlone.runs.length}, median error ${tapeAlone.medianMm.toFixed(2)} mm`, () => {
  expect(tapeAlone.runs).toHaveLength(34);
  expect(tapeAlone.held).toBeGreaterThanOrEqual(31);
  expect(tapeAlone.medianMm).toBeLessThan(2.5);
});

const tied = summary(
  pairs
    .filter(({ released, applied }) => applied === (released + 1) % 13)
    .flatMap((pair) => [1, 2, 3].map((squares) => ({ ...pair, squares, withTies: true }))),
);

test(`tape and tie points, each photograph and the next, 25, 50 and 75 mm: U95 holds ${tied.held} of ${tied.runs.length}, median error ${tied.medianMm.toFixed(2)} mm`, () => {
  expect(tied.runs).toHaveLength(39);
  expect(tied.held).toBeGreaterThanOrEqual(35);
  expect(tied.medianMm).toBeLessThan(1.5);
});

test('no fit says that its marks disagree', () => {
  for (const { fit } of [...tapeAlone.runs, ...tied.runs]) expect(fit.inflation).toBe(1);
});
