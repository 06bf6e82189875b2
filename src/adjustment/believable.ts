/**
 * Is a minimum that the quick search found to be believed, or is the thorough one to look for a better?
 *
 * Model    three signs of a wrong minimum: residuals that are hard to believe (residual-test.ts); something that is known beforehand
 *          missed by far more than its width, which many other equations would dilute in the sum; a direction of view known so
 *          poorly that there is room for several minima (loose-tilt.ts).
 * Assumes  of the right minimum, one in ten is disbelieved too: that costs time and nothing else.
 */
import type { Adjustment } from './adjustment.ts';
import { hasLooseTilt } from './loose-tilt.ts';
import { residualTest } from './residual-test.ts';

const LEAST_CHANCE = 0.05;
const MOST_STANDARD = 2.5;

export function isBelievable(adjustment: Adjustment): boolean {
  return (
    residualTest(adjustment).pValue > LEAST_CHANCE &&
    !(farthestFromKnown(adjustment) > MOST_STANDARD) &&
    !hasLooseTilt(adjustment)
  );
}

/** The largest whitened residual of all equations but the marks' own. */
function farthestFromKnown({ best, markRows }: Adjustment): number {
  const { equations } = best.fitted;
  const ofMarks = new Set(markRows.flatMap(({ row }) => [row, row + 1]));
  let farthest = 0;
  for (let row = 0; row < equations.rows; row++)
    if (!ofMarks.has(row)) farthest = Math.max(farthest, Math.abs(equations.residuals[row] as number));
  return farthest;
}
