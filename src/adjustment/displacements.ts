/**
 * Displacements of the observations of a problem, in units of each one's standard uncertainty, in the order of the equations:
 * first the two coordinates of each mark used, then every other equation. Bounds are no observations.
 */
import type { Mark } from '../marks/mark.ts';
import type { Adjustment } from './adjustment.ts';
import type { Equations } from './equations.ts';
import type { Problem } from './problem.ts';

/** Of equations of the problem below, whose marks are displaced already: the others, which stand last and without bounds. */
export function displaceOthers(equations: Equations, displacements: Float64Array, marks: number): void {
  const { residuals, rows } = equations;
  const before = rows - displacements.length;
  for (let at = 2 * marks; at < displacements.length; at++)
    residuals[before + at] = (residuals[before + at] as number) - (displacements[at] as number);
}

/** A problem whose marks are displaced in place: the angles of rim marks follow them (settle-band). */
export function displaceableMarks({ problem, markRows }: Adjustment): {
  readonly problem: Problem;
  readonly displace: (displacements: Float64Array) => void;
} {
  const used = markRows.map(({ mark }) => ({ mark, copy: { ...mark } as Placed }));
  const copies = new Map(used.map(({ mark, copy }) => [mark, copy as Mark]));
  const views = problem.views.map((view) => ({
    ...view,
    marks: view.marks.map((mark) => copies.get(mark) ?? mark),
  }));
  return {
    problem: { ...problem, views },
    displace: (displacements) => {
      for (const [i, { mark, copy }] of used.entries()) {
        copy.xPx = mark.xPx + mark.sigmaPx * (displacements[2 * i] as number);
        copy.yPx = mark.yPx + mark.sigmaPx * (displacements[2 * i + 1] as number);
      }
    },
  };
}

type Placed = { -readonly [K in keyof Mark]: Mark[K] };
