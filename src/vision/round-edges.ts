/**
 * Round edges about a place: ellipses along which the picture gets brighter, or darker, nearly all the way round.
 *
 * Model    search: middles near the place, a few shapes of ellipses seen up to 32 degrees off square, radii; the mean over rays of the
 *          slope of brightness along them, each cut at CUT levels, is the score: 1 where all agree
 *          then the steepest place along the normals, to a part of a pixel, and an ellipse through those (fit-ellipse.ts), four times
 * Assumes  an edge that is brighter or darker outside all the way, but for parts
 * Fails    an empty list where nothing is round there
 */
import { ellipseEdges } from './ellipse-edges.ts';
import { type EllipseFit, fitEllipse } from './fit-ellipse.ts';
import type { Gray } from './gray.ts';
import { levelAt } from './level-at.ts';
import type { Point } from './point.ts';

export type RoundEdge = EllipseFit & {
  /** Of the way round where an edge was seen on the ellipse. */
  readonly share: number;
  readonly score: number;
};
type Sought = {
  readonly placePx: Point;
  readonly reachPx: number;
  readonly radiiPx: readonly [number, number];
};
type Shape = { readonly shortBy: number; readonly angleRad: number };
type Ring = {
  readonly centre: Point;
  readonly radiusPx: number;
  readonly shape: Shape;
  readonly score: number;
};

const CUT = 24;
const MOST_RINGS = 8;
const RAYS = 40;
const SHAPES: readonly Shape[] = [
  { shortBy: 1, angleRad: 0 },
  ...[0, 1, 2, 3].map((i) => ({ shortBy: 0.88, angleRad: (i * Math.PI) / 4 })),
];

export function roundEdges(gray: Gray, sought: Sought): readonly RoundEdge[] {
  const found = rings(gray, sought).flatMap((ring) => refine(gray, ring) ?? []);
  return found.filter(
    (edge, index) =>
      !found
        .slice(0, index)
        .some(
          (other) =>
            Math.hypot(other.centre[0] - edge.centre[0], other.centre[1] - edge.centre[1]) < 0.5 &&
            Math.abs(other.longPx - edge.longPx) < 0.5,
        ),
  );
}

function rings(gray: Gray, { placePx, reachPx: reach, radiiPx: [least, most] }: Sought): readonly Ring[] {
  const grain = Math.max(1, least / 9);
  const n = Math.max(2, Math.ceil(reach / (1.5 * grain)));
  const steps = Array.from({ length: 2 * n + 1 }, (_, i) => ((i - n) * reach) / n);
  const count = Math.ceil((most - least) / (0.5 * grain)) + 1;
  const found: Ring[] = [];
  for (const shape of SHAPES) {
    const rays = raysOf(shape);
    for (const dx of steps)
      for (const dy of steps) {
        if (Math.hypot(dx, dy) > reach * 1.05) continue;
        const centre: Point = [placePx[0] + dx, placePx[1] + dy];
        const sums = new Float64Array(count);
        for (const [rx, ry] of rays)
          for (let i = 0; i < count; i++) {
            const r = least + 0.5 * grain * i;
            const g = gradient(gray, centre, [rx, ry], r, grain);
            sums[i] = (sums[i] as number) + Math.max(-1, Math.min(1, g / CUT));
          }
        for (let i = 1; i < count - 1; i++) {
          const here = Math.abs(sums[i] as number) / RAYS;
          if (
            here < 0.25 ||
            here < Math.abs(sums[i - 1] as number) / RAYS ||
            here < Math.abs(sums[i + 1] as number) / RAYS
          )
            continue;
          found.push({ centre, radiusPx: least + 0.5 * grain * i, shape, score: here });
        }
      }
  }
  found.sort((a, b) => b.score - a.score);
  const kept: Ring[] = [];
  for (const ring of found) {
    if (kept.length >= MOST_RINGS) break;
    if (
      kept.some(
        (k) =>
          Math.abs(k.radiusPx - ring.radiusPx) < 1.5 * grain &&
          Math.hypot(k.centre[0] - ring.centre[0], k.centre[1] - ring.centre[1]) < 3 * grain,
      )
    )
      continue;
    kept.push(ring);
  }
  return kept;
}

/** From the centre to the ellipse of unit long axis. */
function raysOf({ shortBy, angleRad }: Shape): readonly Point[] {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  return Array.from({ length: RAYS }, (_, i): Point => {
    const turn = (2 * Math.PI * (i + 0.5)) / RAYS;
    const [x, y] = [Math.cos(turn), shortBy * Math.sin(turn)];
    return [c * x - s * y, s * x + c * y];
  });
}

function gradient(gray: Gray, [x, y]: Point, [rx, ry]: Point, r: number, grain: number): number {
  return (
    levelAt(gray, x + (r + grain) * rx, y + (r + grain) * ry) -
    levelAt(gray, x + (r - grain) * rx, y + (r - grain) * ry)
  );
}

function refine(gray: Gray, ring: Ring): RoundEdge | null {
  const grain = Math.max(1, ring.radiusPx / 16);
  let { centre } = ring;
  let long = ring.radiusPx;
  let { shortBy, angleRad } = ring.shape;
  let fit: EllipseFit | null = null;
  let share = 0;
  for (const reach of [3 * grain, 2 * grain, 1.5 * grain, 1.5 * grain]) {
    const outline = { centre, longPx: long, shortPx: long * shortBy, angleRad };
    const points = ellipseEdges(gray, outline, 2 * RAYS, reach).map(({ placePx }) => placePx);
    if (points.length < RAYS / 2) return null;
    fit = fitEllipse(points);
    if (!fit) return null;
    if (fit.shortPx / fit.longPx < 0.7) return null;
    centre = fit.centre;
    long = fit.longPx;
    shortBy = fit.shortPx / fit.longPx;
    angleRad = fit.angleRad;
    share = fit.kept.filter(Boolean).length / (2 * RAYS);
  }
  return fit && { ...fit, share, score: ring.score };
}
