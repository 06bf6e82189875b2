/**
 * The adjustment solved anew, from the solution found, for observations displaced from their values.
 *
 * Model    minimise |r(x) - d|^2, d the displacements in units of each observation's standard uncertainty. Marks and priors are
 *          displaced as values, the other equations (arc, contact, direction of view) as if their right side were. First step with
 *          J of the solution found, from there Levenberg-Marquardt.
 * Assumes  displacements of some standard uncertainties: the minimum near the solution found is meant, other minima are not
 *          searched for. A rim mark's bound to the near half is no observation and stays where it is.
 * Fails    null: the fit did not come to rest.
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import type { Equations } from './equations.ts';
import { type FitOptions, levenbergMarquardt } from './levenberg-marquardt.ts';
import { type Linearisation, linearise } from './linearise.ts';
import { priorRows } from './prior-rows.ts';
import type { Problem } from './problem.ts';
import { settleBand } from './settle-band.ts';

export type DisplacedFit = {
  /** How many can be displaced: both coordinates of each mark used, then every other equation. */
  readonly observations: number;
  readonly solve: (displacements: Float64Array) => Float64Array | null;
};

/**
 * What one solution may be off, some hundredths of its standard uncertainty, is new with every draw and drowns in the spread;
 * ten times the fall that the measurement itself is taken to.
 */
export const DISPLACED_FIT: FitOptions = { maxIterations: 150, tolerance: 1e-3 };

/** null where the solution found is singular. */
export function displacedFit(adjustment: Adjustment, options = DISPLACED_FIT): DisplacedFit | null {
  const { problem, layout, best } = adjustment;
  const priors = priorRows(problem, layout, best.start.x);
  const linearised = (x: Float64Array) => linearise(x, problem, layout, best.start, priors);
  const found = linearised(new Float64Array(best.x));
  const foundResiduals = found.equations.residuals.slice();
  const factor = choleskyFactor(found.equations.normal().matrix, layout.size);
  if (!factor) return null;
  const observations = found.equations.rows - boundCount(found);

  function firstStep(displacements: Float64Array): { readonly to: Float64Array; readonly from: number } {
    found.equations.residuals.set(foundResiduals);
    displace(found, displacements);
    const step = choleskySolve(factor as Float64Array, layout.size, found.equations.normal().gradient);
    return { to: best.x.map((value, i) => value - (step[i] as number)), from: found.equations.chiSquare };
  }

  function solve(displacements: Float64Array): Float64Array | null {
    const moved = layout.band === null ? problem : withMarksDisplaced(adjustment, displacements);
    const evaluate = (x: Float64Array): Equations => {
      settleBand(x, moved, layout, best.start);
      const linearisation = linearised(x);
      displace(linearisation, displacements);
      return linearisation.equations;
    };
    const { to, from } = firstStep(displacements);
    const stepped = evaluate(to);
    const start = stepped.chiSquare <= from ? to : new Float64Array(best.x);
    const fitted = levenbergMarquardt((x) => (x === to ? stepped : evaluate(x)), start, options);
    return fitted.converged ? fitted.x : null;
  }
  return { observations, solve };
}

/** The rows that hold a rim mark to the near half come and go with x; each follows the two rows of its mark. */
function boundCount({ equations, markRows }: Linearisation): number {
  return markRows.filter(({ row }) => equations.groups[row + 2] === 'clamp-band').length;
}

/** Marks from the first row on, the other observations from the last row back: bounds stand between marks only. */
export function displace({ equations, markRows }: Linearisation, displacements: Float64Array): void {
  const { residuals, rows } = equations;
  const take = (row: number, at: number): void => {
    residuals[row] = (residuals[row] as number) - (displacements[at] as number);
  };
  markRows.forEach(({ row }, i) => {
    take(row, 2 * i);
    take(row + 1, 2 * i + 1);
  });
  const count = displacements.length;
  for (let at = 2 * markRows.length; at < count; at++) take(rows - count + at, at);
}

function withMarksDisplaced({ problem, markRows }: Adjustment, displacements: Float64Array): Problem {
  const places = new Map(markRows.map(({ mark }, i) => [mark, 2 * i]));
  const views = problem.views.map((view) => ({
    ...view,
    marks: view.marks.map((mark) => {
      const at = places.get(mark);
      if (at === undefined) return mark;
      const [dx, dy] = [displacements[at] as number, displacements[at + 1] as number];
      return { ...mark, xPx: mark.xPx + mark.sigmaPx * dx, yPx: mark.yPx + mark.sigmaPx * dy };
    }),
  }));
  return { ...problem, views };
}
