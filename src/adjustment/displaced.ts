/**
 * The adjustment solved anew, from the solution found, for observations displaced from their values.
 *
 * Model    minimise |r(x) - d|^2, d the displacements in units of each observation's standard uncertainty. Marks and priors are
 *          displaced as values, the other equations (arc, contact, direction of view) as if their right side were. Gauss-Newton's
 *          steps, the first one with J of the solution found. They are taken whole, though the sum rises at first: a step along a
 *          curved valley leaves it, and the next one comes back to it farther down; halved ones creep. Steps
 *          shrink by a like factor each: the fall F of the sum that a step promises leaves about F^2 / (fall before) after it, and
 *          where that is little enough the step is taken as the last one. Where they do not end, or end above the beginning,
 *          Levenberg-Marquardt from the solution found.
 * Assumes  displacements of some standard uncertainties: the minimum near the solution found is meant, other minima are not
 *          searched for. A rim mark's bound to the near half is no observation and stays where it is.
 * Fails    null: the fit did not come to rest.
 */
import { roomForFactor, sparseFactor, sparseSolve } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { displaceableMarks, displaceOthers } from './displacements.ts';
import type { Equations } from './equations.ts';
import { FULL_FIT, levenbergMarquardt } from './levenberg-marquardt.ts';
import { linearise } from './linearise.ts';
import { priorRows } from './prior-rows.ts';
import { settleBand } from './settle-band.ts';

export type DisplacedFit = {
  /** How many can be displaced: both coordinates of each mark used, then every other equation. */
  readonly observations: number;
  readonly solve: (displacements: Float64Array) => Float64Array | null;
};

/** Some hundredths of a standard uncertainty, new with every trial: they drown in the spread. */
const FALL_LEFT = 1e-3;

/** Nine in ten end within eight; where so many do not end, damped steps are the surer way. */
const MOST_STEPS = 16;

export function displacedFit(adjustment: Adjustment, fallLeft = FALL_LEFT): DisplacedFit {
  const { problem, layout, best, factor: factorFound, markRows } = adjustment;
  const priors = priorRows(problem, layout, best.start.x);
  const marks = displaceableMarks(adjustment);
  const found = linearise(best.x.slice(), problem, layout, best.start, priors);
  const observed = found.observations;
  const residualsFound = found.residuals.slice();
  const [normal, room] = [found.normal(), roomForFactor(layout.size)];
  let spare: Equations | undefined;

  function solve(displacements: Float64Array): Float64Array | null {
    marks.displace(displacements);
    const evaluate = (x: Float64Array, into?: Equations): Equations => {
      settleBand(x, marks.problem, layout, best.start);
      const equations = linearise(x, marks.problem, layout, best.start, priors, into);
      displaceOthers(equations, displacements, markRows.length);
      return equations;
    };
    for (let at = 0; at < observed.length; at++)
      found.residuals[observed[at] as number] =
        (residualsFound[observed[at] as number] as number) - (displacements[at] as number);
    const most = found.chiSquare;
    let x: Float64Array = best.x;
    let step = sparseSolve(factorFound, found.gradient());
    // That of a linear step: its square in standard uncertainties, one for each unknown in the mean.
    let before = layout.size;
    for (let steps = 0; steps < MOST_STEPS; steps++) {
      x = less(x, step);
      spare = evaluate(x, spare);
      const { matrix, gradient } = spare.normal(normal);
      const factor = sparseFactor(matrix, layout.size, room);
      if (!factor) break;
      step = sparseSolve(factor, gradient);
      const fall = product(step, gradient);
      if (spare.chiSquare <= most && fall * Math.min(1, fall / before) <= fallLeft) return less(x, step);
      before = fall;
    }
    const fitted = levenbergMarquardt(evaluate, best.x.slice(), { ...FULL_FIT, tolerance: fallLeft });
    return fitted.converged ? fitted.x : null;
  }
  return { observations: observed.length, solve };
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
