/**
 * The adjustment solved anew, from the solution found, for observations displaced from their values.
 *
 * Model    minimise |r(x) - d|^2, d the displacements in units of each observation's standard uncertainty. Marks and priors are
 *          displaced as values, the other equations (arc, contact, direction of view) as if their right side were. The first step is
 *          Gauss-Newton's with J of the solution found, the further ones Newton's: to J^T J of the place reached comes the
 *          equations' curvature, by the residuals that the first step promised, and by the place's own once a step promises
 *          little (before, they are those of a place beside the valley). Where that has no minimum, J^T J alone. Steps are taken
 *          whole, though the sum rises at first: a step along a curved valley leaves it, and the next one comes back to
 *          it farther down; halved ones creep. The fall F of the sum that a step promises leaves about F^2 / (fall before) after
 *          it, and where that is little enough the step is taken as the last one. Where they do not end, or end above the
 *          beginning, Levenberg-Marquardt from the lowest place seen.
 * Assumes  displacements of some standard uncertainties: the minimum near the solution found is meant, other minima are not
 *          searched for. A rim mark's bound to the near half is no observation and stays where it is.
 * Fails    null: the fit did not come to rest.
 */
import { roomForFactor, sparseFactor, sparseSolve } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { Curvature } from './curvature.ts';
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

/** What is left of the sum is then less than the spread of the sum of one observation. */
const NEAR_FALL = 1;

/** Nine in ten end within eight; where so many do not end, damped steps are the surer way. */
const MOST_STEPS = 16;

export function displacedFit(adjustment: Adjustment, fallLeft = FALL_LEFT): DisplacedFit {
  const { problem, layout, best, factor: factorFound, markRows } = adjustment;
  const priors = priorRows(problem, layout, best.start.x);
  const marks = displaceableMarks(adjustment);
  const undisplaced = (x: Float64Array) => linearise(x, problem, layout, best.start, priors);
  const found = undisplaced(best.x);
  const observed = found.observations;
  const residualsFound = found.residuals.slice();
  const curvature = new Curvature(undisplaced, best.x, factorFound);
  const promised = new Float64Array(observed.length);
  const [normal, room] = [found.normal(), roomForFactor(layout.size)];
  let spare: Equations | undefined;

  function newton(equations: Equations, isNear: boolean): Step | null {
    equations.normal(normal);
    curvature.addTo(normal, isNear ? observedResiduals(equations) : promised);
    let factor = sparseFactor(normal.matrix, layout.size, room);
    if (!factor) factor = sparseFactor(equations.normal(normal).matrix, layout.size, room);
    if (!factor) return null;
    const step = sparseSolve(factor, normal.gradient);
    return { step, fall: product(step, normal.gradient) };
  }

  function solve(displacements: Float64Array): Float64Array | null {
    marks.displace(displacements);
    const evaluate = (x: Float64Array, into?: Equations): Equations => {
      settleBand(x, marks.problem, layout, best.start);
      const equations = linearise(x, marks.problem, layout, best.start, priors, into);
      displaceOthers(equations, displacements, markRows.length);
      return equations;
    };
    for (const [at, row] of observed.entries())
      found.residuals[row] = (residualsFound[row] as number) - (displacements[at] as number);
    const most = found.chiSquare;
    let step = sparseSolve(factorFound, found.gradient());
    for (const [at, row] of observed.entries())
      promised[at] = (found.residuals[row] as number) - found.rowDot(row, step);
    let x: Float64Array = best.x;
    let lowest = { x, chiSquare: most };
    // That of a linear step: its square in standard uncertainties, one for each unknown in the mean.
    let before = layout.size;
    for (let steps = 0; steps < MOST_STEPS; steps++) {
      x = less(x, step);
      spare = evaluate(x, spare);
      const { chiSquare } = spare;
      const next = newton(spare, before < NEAR_FALL);
      if (!next) break;
      ({ step } = next);
      if (chiSquare <= most && next.fall * Math.min(1, next.fall / before) <= fallLeft) return less(x, step);
      if (chiSquare < lowest.chiSquare) lowest = { x, chiSquare };
      before = next.fall;
    }
    const fitted = levenbergMarquardt(evaluate, lowest.x.slice(), { ...FULL_FIT, tolerance: fallLeft });
    return fitted.converged ? fitted.x : null;
  }
  return { observations: observed.length, solve };
}

/** To be taken off, and the fall of the sum that it promises. */
type Step = { readonly step: Float64Array; readonly fall: number };

function observedResiduals({ residuals, observations }: Equations): readonly number[] {
  return observations.map((row) => residuals[row] as number);
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
