/**
 * How far past square to the rod the arm is when the brake is applied. Advice only: no law names an angle.
 *
 * Model    past square: the angle, with the guard factor times its u, is under 90 degrees.
 *          An arm of length L that is set square at half the stroke s ends at 90 degrees - asin(s / 2 L); one that is proven past that
 *          is further than either way of setting it gives.
 * Assumes  the stroke along the rod's line at square, as for small swings.
 * Source   the rule set's rule 'arm-near-square'; the two ways of setting: an axle maker's manual and a provincial manual, excerpts.
 */
import { GUARD_FACTOR } from '../finding/guard-band.ts';
import type { Measured } from '../measurement/measured.ts';
import type { PurposeResults } from './purpose-results.ts';

export type PastSquare = {
  readonly angle: Measured;
  /** Where an arm set square at half this stroke ends; null where the arm's length is not known. */
  readonly halfStrokeRad: number | null;
  /** Proven past that too. */
  readonly isFar: boolean;
};

/** Null where the arm is not proven past square. */
export function pastSquare({ measurement }: PurposeResults): PastSquare | null {
  const measured = measurement?.assessment?.measurement;
  if (!measured?.ok) return null;
  const { armAngleAppliedRad: angle, strokeMm, sizes } = measured.value;
  if (angle === null) return null;
  const most = angle.value + GUARD_FACTOR * angle.u;
  if (most >= Math.PI / 2) return null;
  const swing = sizes.armLengthMm ? strokeMm.value / (2 * sizes.armLengthMm.value) : null;
  const halfStrokeRad = swing !== null && swing < 1 ? Math.PI / 2 - Math.asin(swing) : null;
  return { angle, halfStrokeRad, isFar: halfStrokeRad !== null && most < halfStrokeRad };
}
