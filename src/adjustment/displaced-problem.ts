/** The equations of an adjusted problem with its observations displaced from their values; rim marks' angles are settled first. */
import type { Adjustment } from './adjustment.ts';
import { displaceableMarks, displaceOthers } from './displacements.ts';
import type { Equations } from './equations.ts';
import { addEquations, linearise } from './linearise.ts';
import { priorRows } from './prior-rows.ts';
import { settleBand } from './settle-band.ts';
import { Slopes } from './slopes.ts';

/** Sum of the squared residuals, and half its slope. */
export type Slope = { readonly chiSquare: number; readonly gradient: Float64Array };

export type DisplacedProblem = {
  /** How many can be displaced: both coordinates of each mark used, then every other equation. */
  readonly observations: number;
  /** In units of each one's standard uncertainty; for all that is asked from then on. */
  readonly displace: (displacements: Float64Array) => void;
  /** At the solution found. */
  readonly slopeFound: () => Slope;
  /** x is moved in place; so below. spare: filled anew. */
  readonly equationsAt: (x: Float64Array, spare?: Equations) => Equations;
  readonly slopeAt: (x: Float64Array) => Slope;
};

export function displacedProblem(adjustment: Adjustment): DisplacedProblem {
  const { problem, layout, best, markRows } = adjustment;
  const { start } = best;
  const priors = priorRows(problem, layout, start.x);
  const marks = displaceableMarks(adjustment);
  const found = linearise(best.x.slice(), problem, layout, start, priors);
  const observed = found.observations;
  const residualsFound = found.residuals.slice();
  const slopes = new Slopes(layout.size, markRows.length);
  let displacements = new Float64Array(observed.length) as Float64Array;
  return {
    observations: observed.length,
    displace: (wanted) => {
      displacements = wanted;
      marks.displace(wanted);
    },
    slopeFound: () => {
      for (const [at, row] of observed.entries())
        found.residuals[row] = (residualsFound[row] as number) - (displacements[at] as number);
      return { chiSquare: found.chiSquare, gradient: found.gradient() };
    },
    equationsAt: (x, spare) => {
      settleBand(x, marks.problem, layout, start);
      const equations = linearise(x, marks.problem, layout, start, priors, spare);
      displaceOthers(equations, displacements, markRows.length);
      return equations;
    },
    slopeAt: (x) => {
      settleBand(x, marks.problem, layout, start);
      slopes.emptied(displacements);
      addEquations(slopes, x, marks.problem, layout, start, priors);
      return { chiSquare: slopes.chiSquare, gradient: slopes.gradient.slice() };
    },
  };
}
