/**
 * The difference of two values that come from different measurements.
 *
 * Model    d = a - b, u^2 = u_a^2 + u_b^2, U95 = 1.96 u
 * Assumes  nothing in common: two results of one adjustment have their difference from its covariance instead.
 * Source   JCGM 100:2008, 5.1.2 (clause from memory).
 */
import type { WithU } from './measured.ts';
import { K95 } from './measured-from.ts';

export function minus(a: WithU, b: WithU): WithU {
  const u = Math.hypot(a.u, b.u);
  return { value: a.value - b.value, u, U95: K95 * u };
}
