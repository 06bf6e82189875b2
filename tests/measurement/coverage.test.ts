import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import type { Measured } from '../../src/measurement/measured.ts';
import { type ReferenceKind, simulate } from '../simulation/scene.ts';

const SCENES = 60;

/**
 * U95 is to hold the truth in 95 of 100 scenes: of 60, 57 with a binomial standard deviation of 1.7. Fewer than 53 (88 %)
 * come about by luck once in 100 runs of one row; the scenes are seeded, so a row that passes keeps passing until the engine
 * or a scene changes. A U that is half of what it should be would hold two thirds of them.
 */
const LEAST_HELD = 53;
/**
 * The arm angle from a known distance alone: it rests on the usual arm and on perspective, its true distribution has two humps,
 * and the covariance at one of them is too small. Known to fall short: about 87 % of 300 scenes, stated in docs/accuracy.md.
 */
const LEAST_ANGLES_BY_DISTANCE = 46;

const KINDS: readonly ReferenceKind[] = [
  'tape',
  'clamp-band',
  'tape+arm',
  'tape+band',
  'arm-length',
  'distance',
];

type Held = {
  readonly stroke: number;
  readonly released: number;
  readonly applied: number;
  readonly quarter: number;
};

/** How many of the scenes hold the truth, tripod and hand-held by turns. */
function held(reference: ReferenceKind, sigmaPx: number): Held {
  const count = { stroke: 0, released: 0, applied: 0, quarter: 0 };
  for (let seed = 1; seed <= SCENES; seed++) {
    const cameraStill = seed % 2 === 0;
    const { input, truth } = simulate({ seed, reference, sigmaPx, cameraStill, rodMarks: seed % 3 > 0 });
    const result = measure(input);
    if (!result.ok) continue;
    const { strokeMm, armAngleReleasedRad, armAngleAppliedRad } = result.value;
    if (holds(strokeMm, truth.strokeMm)) count.stroke++;
    if (holds(strokeMm, truth.strokeMm, 1 / 4)) count.quarter++;
    if (armAngleReleasedRad && holds(armAngleReleasedRad, truth.armAngleReleasedRad)) count.released++;
    if (armAngleAppliedRad && holds(armAngleAppliedRad, truth.armAngleAppliedRad)) count.applied++;
  }
  return count;
}

function holds({ value, U95 }: Measured, truth: number, share = 1): boolean {
  return Math.abs(value - truth) <= share * U95;
}

test.each(KINDS.flatMap((reference) => [1, 0.25].map((sigmaPx) => ({ reference, sigmaPx }))))(
  'U95 holds the truth: $reference, marks of $sigmaPx px',
  ({ reference, sigmaPx }) => {
    const { stroke, released, applied, quarter } = held(reference, sigmaPx);
    expect(stroke).toBeGreaterThanOrEqual(LEAST_HELD);
    const leastAngles = reference === 'distance' ? LEAST_ANGLES_BY_DISTANCE : LEAST_HELD;
    expect(released).toBeGreaterThanOrEqual(leastAngles);
    expect(applied).toBeGreaterThanOrEqual(leastAngles);
    // This bound can fail: a quarter of U95 holds about 38 % and would not pass it.
    expect(quarter).toBeLessThan(LEAST_HELD);
  },
);
