/**
 * Marks on a rim from the edge found along it, each with its own uncertainty.
 *
 * Model    MARKS windows of equal angle; a window's mark lies on the arc's normal at the mean angle of its edge places, off the arc by their
 *          mean. Edge places near each other are off alike: of n with the correlation r of neighbours n (1 - r) / (1 + r) count
 *          beside that noise what shading, rust and chamfer do over longer ways, LONG_PX, the same for neighbouring marks: the adjustment
 *          takes marks for independent, so each is given sqrt(MARKS / WAYS) of it
 * Fails    an empty list where too few windows show the edge
 */
import { arcNormal, arcPoint } from './arc.ts';
import type { FoundMark } from './assist-sight.ts';
import { RIM_END_RAD, type Rim, type RimPoint } from './rim-edge.ts';

const MARKS = 24;
const LEAST_IN_WINDOW = 3;
/** Measured: docs/assists.md. */
const LONG_PX = 0.17;
const WAYS = 5;

export function rimMarks({ arc, fit, points }: Rim): readonly FoundMark[] {
  const r = Math.max(0, Math.min(0.9, neighbours(points)));
  const each = Math.hypot(fit.rmsPx, 0.05);
  return Array.from({ length: MARKS }, (_, i): FoundMark | null => {
    const [from, to] = [i, i + 1].map((k) => RIM_END_RAD * ((2 * k) / MARKS - 1)) as [number, number];
    const here = points.filter(({ w }) => w >= from && w < to);
    if (here.length < LEAST_IN_WINDOW) return null;
    const mean = (of: (point: RimPoint) => number) => here.reduce((sum, p) => sum + of(p), 0) / here.length;
    const [w, off] = [mean((p) => p.w), mean((p) => p.offPx)];
    const [[x, y], [nx, ny]] = [arcPoint(arc, w), arcNormal(arc, w)];
    const count = Math.max(1, (here.length * (1 - r)) / (1 + r));
    return {
      placePx: [x + off * nx, y + off * ny],
      sigmaPx: Math.hypot(each / Math.sqrt(count), LONG_PX * Math.sqrt(MARKS / WAYS)),
      readingMm: null,
    };
  }).filter((mark) => mark !== null);
}

/** Correlation of places next to each other. */
function neighbours(points: readonly RimPoint[]): number {
  let [both, one] = [0, 0];
  points.forEach(({ offPx }, i) => {
    const next = points[i + 1];
    one += offPx * offPx;
    if (next) both += offPx * next.offPx;
  });
  return one > 0 ? both / one : 0;
}
