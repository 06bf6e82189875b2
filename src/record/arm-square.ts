/**
 * Has the arm gone past square to the rod when the brake is applied? Advice only: no law names an angle.
 *
 * Rule     past square where the angle, with the guard factor times its u, is under 90 degrees.
 * Source   the rule set's rule 'arm-near-square'.
 */
import { GUARD_FACTOR } from '../finding/guard-band.ts';
import type { Measured } from '../measurement/measured.ts';
import type { PurposeResults } from './purpose-results.ts';

export function appliedAngle({ measurement }: PurposeResults): Measured | null {
  const measured = measurement?.assessment?.measurement;
  return measured?.ok ? measured.value.armAngleAppliedRad : null;
}

export function isPastSquare(results: PurposeResults): boolean {
  const angle = appliedAngle(results);
  return angle !== null && angle.value + GUARD_FACTOR * angle.u < Math.PI / 2;
}
