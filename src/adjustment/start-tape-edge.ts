/** Where the points on the edge of a tape start: beside the line of its graduations. */
import type { Layout } from './layout.ts';
import type { ProblemView } from './problem.ts';
import type { PlaneCrossing } from './start-rays.ts';

/** onEdge: crossings of the view's edge marks with the plane in which the tape starts. */
export function startTapeEdge(
  layout: Layout,
  viewIndex: number,
  view: ProblemView,
  onEdge: readonly PlaneCrossing[],
  x: Float64Array,
): void {
  const [tape, edge] = [layout.tapes[viewIndex], layout.tapeEdges[viewIndex]];
  if (typeof tape !== 'number' || typeof edge !== 'number' || onEdge.length === 0) return;
  const [x0, y0, angle] = [x[tape] as number, x[tape + 1] as number, x[tape + 3] as number];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const places = onEdge.map(({ xMm, yMm }) => ({
    along: c * (xMm - x0) + s * (yMm - y0),
    across: c * (yMm - y0) - s * (xMm - x0),
  }));
  x.set([places.reduce((sum, { across }) => sum + across, 0) / places.length, 0, 0], edge);
  const marks = view.marks.filter(({ kind }) => kind === 'tape-edge');
  for (const [i, { along }] of places.entries()) {
    const at = layout.nuisance.get(marks[i]?.id ?? '');
    if (at !== undefined) x[at] = along;
  }
}
