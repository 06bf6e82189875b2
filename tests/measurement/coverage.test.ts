import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import type { Measured } from '../../src/measurement/measured.ts';
import { type ReferenceKind, simulate } from '../simulation/scene.ts';

const SCENES = 30;

/**
 * U95 is to hold the truth in 95 of 100 scenes: of 30, 28.5 with a binomial standard deviation of 1.2. Fewer than 26 come about
 * by luck in 2 of 100 runs of one row; the scenes are seeded, so a row that passes keeps passing until the engine or a scene
 * changes. A U that is half of what it should be would hold 20 of them. Thousands of scenes: npm run bench:accuracy.
 */
const LEAST_HELD = 26;
/**
 * The arm angle from a known distance alone: it rests on the usual arm and on perspective, its true distribution has two humps,
 * and the covariance at one of them is too small. Known to fall short: about 87 % of 300 scenes, stated in docs/accuracy.md.
 */
const LEAST_ANGLES_BY_DISTANCE = 22;

type Row = { readonly reference: ReferenceKind; readonly sigmaPx: readonly number[] };

/** One length alone takes the long search: both qualities of mark by turns in one row. */
const ROWS: readonly Row[] = [
  ...(['tape', 'clamp-band', 'tape+arm', 'tape+band'] as const).flatMap((reference) => [
    { reference, sigmaPx: [1] },
    { reference, sigmaPx: [0.25] },
  ]),
  { reference: 'arm-length', sigmaPx: [1, 1, 0.25, 0.25] },
  { reference: 'distance', sigmaPx: [1, 1, 0.25, 0.25] },
];

type Held = {
  readonly stroke: number;
  readonly released: number;
  readonly applied: number;
  readonly quarter: number;
};

/** How many of the scenes hold the truth, tripod and hand-held by turns. */
function held({ reference, sigmaPx }: Row): Held {
  const count = { stroke: 0, released: 0, applied: 0, quarter: 0 };
  for (let seed = 1; seed <= SCENES; seed++) {
    const cameraStill = seed % 2 === 0;
    const { input, truth } = simulate({
      ...{ seed, reference, cameraStill, rodMarks: seed % 3 > 0 },
      sigmaPx: sigmaPx[seed % sigmaPx.length] as number,
    });
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

test.each(ROWS)('U95 holds the truth: $reference, marks of $sigmaPx px', (row) => {
  const { stroke, released, applied, quarter } = held(row);
  expect(stroke).toBeGreaterThanOrEqual(LEAST_HELD);
  const leastAngles = row.reference === 'distance' ? LEAST_ANGLES_BY_DISTANCE : LEAST_HELD;
  expect(released).toBeGreaterThanOrEqual(leastAngles);
  expect(applied).toBeGreaterThanOrEqual(leastAngles);
  // This bound can fail: a quarter of U95 holds about 38 % and would not pass it.
  expect(quarter).toBeLessThan(LEAST_HELD);
});
