/**
 * Nonlinear least squares of few unknowns over many observations.
 *
 * Model    (N + lambda diag N) step = -g, N = J^T J, g = J^T r; lambda falls where a step lowers the sum of squares, else rises
 * Assumes  a start near enough; unknowns of sizes near one
 * Fails    'singular' where nothing holds an unknown, 'unsettled' where the steps do not end
 * Source   Marquardt, J. SIAM 11 (1963) 431-441 (from memory)
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';

/** Sum of squares at x, with N (n x n, at least its lower triangle) and g. */
export type Squares = {
  readonly sum: number;
  readonly normal: Float64Array;
  readonly gradient: Float64Array;
};

export type Descent = {
  readonly x: Float64Array;
  readonly sum: number;
  /** N^-1: the covariance for observations of unit variance. */
  readonly cofactors: Float64Array;
};

export type DescentFailure = { readonly code: 'descend/singular' | 'descend/unsettled' };

const MOST_STEPS = 40;
/** Share by which the last step may still lower the sum: of some thousand observations, a thirtieth of a standard deviation. */
const ENOUGH = 1e-6;

export function descend(
  start: Float64Array,
  squaresAt: (x: Float64Array) => Squares,
): Result<Descent, DescentFailure> {
  const n = start.length;
  let x = start;
  let at = squaresAt(x);
  let lambda = 1e-3;
  for (let step = 0; step < MOST_STEPS; step++) {
    const damped = Float64Array.from(at.normal);
    for (let i = 0; i < n; i++) damped[i * n + i] = (damped[i * n + i] as number) * (1 + lambda);
    const lower = choleskyFactor(damped, n);
    if (!lower) return fail({ code: 'descend/singular' });
    const change = choleskySolve(lower, n, at.gradient);
    const next = x.map((value, i) => value - (change[i] as number));
    const there = squaresAt(next);
    if (there.sum <= at.sum) {
      const settled = at.sum - there.sum <= ENOUGH * at.sum;
      x = next;
      at = there;
      lambda /= 10;
      if (settled) return ended(x, at, n);
    } else {
      lambda *= 10;
      if (lambda > 1e9) return ended(x, at, n);
    }
  }
  return fail({ code: 'descend/unsettled' });
}

function ended(x: Float64Array, at: Squares, n: number): Result<Descent, DescentFailure> {
  const lower = choleskyFactor(at.normal, n);
  if (!lower) return fail({ code: 'descend/singular' });
  return ok({ x, sum: at.sum, cofactors: inverseFromLower(lowerInverse(lower, n), n) });
}
