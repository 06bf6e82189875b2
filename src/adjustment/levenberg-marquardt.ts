/**
 * Least squares by Levenberg-Marquardt.
 *
 * Model    minimise |r(x)|^2; step from (J^T J + lambda diag(J^T J)) dx = -J^T r; lambda follows the gain ratio.
 * Assumes  residuals already divided by their standard uncertainties; evaluate() gives r and J together.
 * Fails    not converged: the iterations ran out; singular: an unknown that no equation holds.
 * Source   Madsen, Nielsen, Tingleff: Methods for non-linear least squares problems, 2004, 3.2 (section from memory).
 */
import { roomForFactor, type SparseFactor, sparseFactor, sparseSolve } from '../basics/sparse-symmetric.ts';
import type { Equations, Normal } from './equations.ts';

export type Fitted = {
  readonly x: Float64Array;
  readonly equations: Equations;
  readonly chiSquare: number;
  readonly iterations: number;
  readonly converged: boolean;
};

export type FitOptions = {
  readonly maxIterations: number;
  /** Fall of |r|^2 still to be had, at which the fit ends; absolute, since r is whitened. */
  readonly tolerance: number;
};

/**
 * A fall of 1e-4 still to be had leaves the unknowns within some hundredths of their standard uncertainty. Directions that
 * only wide priors hold converge slowly (the marks' curvature times their residuals outweighs the prior), hence the 1000: of a tape before a
 * camera that hardly moves some 700 were needed (simulated clip 1245).
 */
export const FULL_FIT: FitOptions = { maxIterations: 1000, tolerance: 1e-4 };

const ROUNDING = 4 * Number.EPSILON;
/** The tolerance is meant for sums of this size; of a larger one, as where marks are wrong, it is the same share. */
const USUAL_CHI_SQUARE = 100;

/**
 * evaluate may move x in place to a better point on its own account (variables that have a minimum of their own), and may fill
 * spare, equations of an iteration that was left, instead of new ones.
 */
export function levenbergMarquardt(
  evaluate: (x: Float64Array, spare?: Equations) => Equations,
  start: Float64Array,
  options: FitOptions = FULL_FIT,
): Fitted {
  const n = start.length;
  let x = start;
  let equations = evaluate(x);
  let spare: Equations | undefined;
  let chiSquare = equations.chiSquare;
  const normal = equations.normal();
  const { matrix, gradient } = normal;
  const room = roomForFactor(n);
  let lambda = 1e-3;
  let growth = 2;
  for (let iteration = 1; iteration <= options.maxIterations; iteration++) {
    const step = dampedStep(normal, lambda, room);
    const expected = step ? expectedFall(step, gradient, matrix, n, lambda) : 0;
    // Nothing to gain, or nothing that rounding leaves of it.
    const little = options.tolerance * Math.max(1, chiSquare / USUAL_CHI_SQUARE);
    if (step && expected <= Math.max(little, ROUNDING * chiSquare) && lambda <= 1e-2) {
      return { x, equations, chiSquare, iterations: iteration, converged: true };
    }
    const nextX = step ? moved(x, step) : x;
    const next: Equations = step ? evaluate(nextX, spare) : equations;
    const fall = step ? chiSquare - next.chiSquare : Number.NaN;
    if (fall > 0) {
      const gain = fall / Math.max(expected, Number.MIN_VALUE);
      lambda = Math.max(1e-12, lambda * Math.max(1 / 10, 1 - (2 * gain - 1) ** 3));
      growth = 2;
      x = nextX;
      spare = equations;
      equations = next;
      chiSquare = next.chiSquare;
      equations.normal(normal);
    } else {
      if (step) spare = next;
      lambda *= growth;
      growth *= 2;
      // No step, however short, lowers the sum any more: working precision is reached.
      if (lambda > 1e12) {
        return {
          x,
          equations,
          chiSquare,
          iterations: iteration,
          converged: step !== null && expected <= 1e-6 * chiSquare,
        };
      }
    }
  }
  return { x, equations, chiSquare, iterations: options.maxIterations, converged: false };
}

/** room: overwritten. */
function dampedStep({ matrix, gradient }: Normal, lambda: number, room: SparseFactor): Float64Array | null {
  const factor = sparseFactor(matrix, room.n, room, lambda);
  if (!factor) return null;
  const step = sparseSolve(factor, gradient);
  for (let i = 0; i < step.length; i++) step[i] = -(step[i] as number);
  return step;
}

/** Fall of |r|^2 that the linear model promises: dx . (lambda D dx - g). */
function expectedFall(
  step: Float64Array,
  gradient: Float64Array,
  matrix: Float64Array,
  n: number,
  lambda: number,
): number {
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const d = step[i] as number;
    sum += d * (lambda * (matrix[i * n + i] as number) * d - (gradient[i] as number));
  }
  return sum;
}

function moved(x: Float64Array, step: Float64Array): Float64Array {
  const next = new Float64Array(x);
  for (let i = 0; i < next.length; i++) next[i] = (next[i] as number) + (step[i] as number);
  return next;
}
