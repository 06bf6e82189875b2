/** Found marks that lie on one line, drawn as that line: through which of them it runs in which order, and whether each has room. */
import type { MarkKind } from '../../marks/mark.ts';
import type { FramePoint, ScreenPoint } from './view-transform.ts';

/** rim: round a chamber; row: graduations along a tape; edge: along its edge; axis: along the rod's middle. */
export type LineSort = 'rim' | 'row' | 'edge' | 'axis';
export const LINE_SORTS: readonly LineSort[] = ['rim', 'row', 'edge', 'axis'];

/** On which line many found marks of a kind lie. */
export const LINES: Readonly<Partial<Record<MarkKind, LineSort>>> = {
  'clamp-band': 'rim',
  'tape-graduation': 'row',
  'tape-edge': 'edge',
  'rod-line': 'axis',
};

/** Two dots, and as much of the line between them. */
const LEAST_APART_CSS = 12;

/** The marks of one sort in their order along its line. */
export function alongLine<P extends FramePoint & { readonly line?: LineSort | null }>(
  marks: readonly P[],
  sort: LineSort,
): readonly P[] {
  const points = marks.filter(({ line }) => line === sort);
  const mean = (of: (point: P) => number) => points.reduce((sum, p) => sum + of(p), 0) / points.length;
  const [x, y] = [mean(({ xPx }) => xPx), mean(({ yPx }) => yPx)];
  const from = points.map((point) => ({ point, dx: point.xPx - x, dy: point.yPx - y }));
  if (sort === 'rim') return roundFromWidestGap(from);
  const far = from.reduce((most, p) => (Math.hypot(p.dx, p.dy) > Math.hypot(most.dx, most.dy) ? p : most), {
    dx: 0,
    dy: 0,
  });
  const along = (p: Beside<P>) => p.dx * far.dx + p.dy * far.dy;
  return from.sort((a, b) => along(a) - along(b)).map(({ point }) => point);
}

/** Beside the middle of all. */
type Beside<P> = { readonly point: P; readonly dx: number; readonly dy: number };

function roundFromWidestGap<P>(from: readonly Beside<P>[]): readonly P[] {
  const round = from
    .map(({ point, dx, dy }) => ({ point, turn: Math.atan2(dy, dx) }))
    .sort((a, b) => a.turn - b.turn);
  const last = (round.at(-1)?.turn ?? 0) - 2 * Math.PI;
  const gaps = round.map(({ turn }, i) => turn - (round[i - 1]?.turn ?? last));
  const first = gaps.indexOf(Math.max(...gaps));
  return [...round.slice(first), ...round.slice(0, first)].map(({ point }) => point);
}

export function isRoomForDots(places: readonly ScreenPoint[]): boolean {
  let length = 0;
  places.forEach(({ xCss, yCss }, i) => {
    const next = places[i + 1];
    if (next) length += Math.hypot(next.xCss - xCss, next.yCss - yCss);
  });
  return length >= LEAST_APART_CSS * (places.length - 1);
}
