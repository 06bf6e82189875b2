/**
 * Displacements of the observations of a problem, in units of each one's standard uncertainty: first the two coordinates of each
 * mark used, then every other equation in its order.
 *
 * Assumes  equations of marks stand first. A rim mark's bound, the row after its two, comes and goes with the unknowns; it is no
 *          observation.
 */
import type { Mark } from '../marks/mark.ts';
import type { Adjustment } from './adjustment.ts';
import type { Linearisation } from './linearise.ts';
import type { Problem } from './problem.ts';

/** Row of each observation, in the order of displacements. */
export function observationRows({ equations, markRows }: Linearisation): readonly number[] {
  const ofMarks = markRows.flatMap(({ row }) => [row, row + 1]);
  const last = ofMarks.at(-1) ?? -1;
  const others = Array.from({ length: equations.rows - last - 1 }, (_, i) => last + 1 + i);
  return [...ofMarks, ...(isBound(equations.groups[last + 1]) ? others.slice(1) : others)];
}

/** What follows the marks are arcs and directions of view: a row of the band's there is the last mark's bound. */
function isBound(group: string | undefined): boolean {
  return group === 'clamp-band';
}

export function displace({ equations, markRows }: Linearisation, displacements: Float64Array): void {
  const { residuals, rows } = equations;
  const take = (row: number, at: number): void => {
    residuals[row] = (residuals[row] as number) - (displacements[at] as number);
  };
  for (let i = 0; i < markRows.length; i++) {
    const { row } = markRows[i] as (typeof markRows)[number];
    take(row, 2 * i);
    take(row + 1, 2 * i + 1);
  }
  // From the last row back: the bounds stand between the marks.
  const count = displacements.length;
  for (let at = 2 * markRows.length; at < count; at++) take(rows - count + at, at);
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
