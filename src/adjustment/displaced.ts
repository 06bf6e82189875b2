/**
 * The adjustment solved anew, from the solution found, for observations displaced from their values.
 *
 * Model    minimise |r(x) - d|^2, d the displacements in units of each observation's standard uncertainty. Marks and priors are
 *          displaced as values, the other equations (arc, contact, direction of view) as if their right side were. The first step
 *          is the linear one, N^-1 J^T (d - r) of the solution found; Gauss-Newton's follow while the sum falls, else
 *          Levenberg-Marquardt.
 * Assumes  displacements of some standard uncertainties: the minimum near the solution found is meant, other minima are not
 *          searched for. A rim mark's bound to the near half is no observation and stays where it is.
 * Fails    null: the fit did not come to rest.
 */
import { roomForFactor, sparseFactor, sparseSolve } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { displace, withMarksDisplaced } from './displacements.ts';
import type { Equations } from './equations.ts';
import { FULL_FIT, levenbergMarquardt } from './levenberg-marquardt.ts';
import { linearResponse } from './linear-response.ts';
import { linearise } from './linearise.ts';
import { priorRows } from './prior-rows.ts';
import { settleBand } from './settle-band.ts';

export type DisplacedFit = {
  /** How many can be displaced: both coordinates of each mark used, then every other equation. */
  readonly observations: number;
  readonly solve: (displacements: Float64Array) => Float64Array | null;
};

/**
 * The step that begins at such a fall is the last one and is taken: what it leaves is some hundredths of a standard uncertainty,
 * new with every draw, and drowns in the spread.
 */
const LAST_FALL = 5e-3;

/** Where so many of Gauss-Newton's steps do not end, damped ones are the quicker way. */
const MOST_STEPS = 25;

/** Damped steps end where they would be begun no more, without a last one: hence finer. */
const FINER = 10;

export function displacedFit(adjustment: Adjustment, lastFall = LAST_FALL): DisplacedFit {
  const { problem, layout, best } = adjustment;
  const priors = priorRows(problem, layout, best.start.x);
  const linear = linearResponse(adjustment);
  const [normal, room] = [best.fitted.equations.normal(), roomForFactor(layout.size)];
  const damped = { ...FULL_FIT, tolerance: lastFall / FINER };
  let spare: Equations | undefined;

  function solve(displacements: Float64Array): Float64Array | null {
    const moved = withMarksDisplaced(adjustment, displacements);
    const evaluate = (x: Float64Array, into?: Equations): Equations => {
      settleBand(x, moved, layout, best.start);
      const linearisation = linearise(x, problem, layout, best.start, priors, into);
      displace(linearisation, displacements);
      return linearisation.equations;
    };
    let x: Float64Array = best.x;
    let chiSquare = linear.chiSquare(displacements);
    let step = linear.step(displacements);
    for (let steps = 0; steps < MOST_STEPS; steps++) {
      const next = less(x, step);
      spare = evaluate(next, spare);
      if (!(spare.chiSquare <= chiSquare)) break;
      x = next;
      chiSquare = spare.chiSquare;
      const { matrix, gradient } = spare.normal(normal);
      const factor = sparseFactor(matrix, layout.size, room);
      if (!factor) break;
      step = sparseSolve(factor, gradient);
      if (product(step, gradient) <= lastFall) return less(x, step);
    }
    const fitted = levenbergMarquardt(evaluate, x.slice(), damped);
    return fitted.converged ? fitted.x : null;
  }
  return { observations: linear.observations, solve };
}

function less(x: Float64Array, step: Float64Array): Float64Array {
  const next = x.slice();
  for (let i = 0; i < next.length; i++) next[i] = (next[i] as number) - (step[i] as number);
  return next;
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
