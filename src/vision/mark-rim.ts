/**
 * The rim of a centre mark, where its bore begins in the face: what tells the middle of the end.
 *
 * Model    edges across an ellipse of the end's own shape (ellipse-edges.ts), strong ones counting most, and the middle and radius that fit
 *          them best (fit-circle.ts, in the frame in which that ellipse is a circle); from several radii: most of them must come to one
 *          and the same
 *          the bore is brighter than the face on one side, darker on the other: so both border on the face. Of one that is dark all
 *          round the lit side may look as the face does, or the dark begin deeper down: its outline is not the rim
 *          an ellipse of any shape through the same edges must have the same middle: spots beside the bore draw it elsewhere
 * Assumes  the face flat, and seen as much from the side as the end's outline is
 * Fails    null where no such rim is seen nearly all round, or starts come to different ones
 */
import { median } from './biweight.ts';
import { type EllipseEdge, ellipseEdges } from './ellipse-edges.ts';
import { fitCircle } from './fit-circle.ts';
import { fitEllipse } from './fit-ellipse.ts';
import type { Gray } from './gray.ts';
import { apart, type Point } from './point.ts';

/** How an ellipse's short axis is to its long one, and the angle of that from x. */
export type EllipseShape = { readonly shortBy: number; readonly angleRad: number };

/** rmsPx: of its edges; step: of the side that stands out less, median, levels of 255. */
export type MarkRim = {
  readonly placePx: Point;
  readonly radiusPx: number;
  readonly rmsPx: number;
  readonly step: number;
};

type Ring = Pick<MarkRim, 'placePx' | 'radiusPx' | 'rmsPx'> & { readonly edges: readonly EllipseEdge[] };

const RAYS = 48;
const STARTS = [0.7, 0.85, 1, 1.2, 1.45, 1.75] as const;
const LEAST_AGREEING = 4;
const SAME_PX = 0.25;
const SAME_RADIUS_PX = 0.4;
/** Over the starting radius, and in pixels at the least. */
const REACHES = [0.45, 0.3, 0.2, 0.15, 0, 0] as const;
const LEAST_REACH_PX = 1.2;
/** Strong is what two edges in five surpass: weaker ones count for less, those below CUT of it for nothing. */
const STRONG_FROM = 0.6;
const CUT = 0.3;
const KEPT = 0.3;
/** Of the way round: where edges are seen, and of these where the shade is. */
const LEAST_SHARE = 0.75;
const MOST_GAP_RAD = 1.1;
const SHADED = [0.4, 0.65] as const;
/** Between the middles of the two shapes. */
const MOST_APART_PX = 0.22;

export function markRim(
  gray: Gray,
  start: Point,
  startRadiusPx: number,
  shape: EllipseShape,
): MarkRim | null {
  const rims = STARTS.flatMap((part) => rimFrom(gray, start, part * startRadiusPx, shape) ?? []);
  const agreeing = rims
    .map((rim) => rims.filter((other) => isSame(rim, other)))
    .reduce((most, each) => (each.length > most.length ? each : most), []);
  if (agreeing.length < LEAST_AGREEING) return null;
  const of = (value: (rim: MarkRim) => number) => median(agreeing.map(value));
  return {
    placePx: [of(({ placePx }) => placePx[0]), of(({ placePx }) => placePx[1])],
    radiusPx: of(({ radiusPx }) => radiusPx),
    rmsPx: of(({ rmsPx }) => rmsPx),
    step: of(({ step }) => step),
  };
}

const isSame = (a: MarkRim, b: MarkRim) =>
  apart(a.placePx, b.placePx) < SAME_PX && Math.abs(a.radiusPx - b.radiusPx) < SAME_RADIUS_PX;

function rimFrom(gray: Gray, start: Point, startRadiusPx: number, shape: EllipseShape): MarkRim | null {
  let ring: Ring | null = { placePx: start, radiusPx: startRadiusPx, rmsPx: 0, edges: [] };
  for (const reach of REACHES) {
    ring = nearer(gray, ring, shape, Math.max(LEAST_REACH_PX, reach * startRadiusPx));
    if (!ring || apart(ring.placePx, start) > 2 * startRadiusPx) return null;
  }
  const { edges, ...rim } = ring;
  if (edges.length < LEAST_SHARE * RAYS || mostGapRad(edges) > MOST_GAP_RAD) return null;
  const free = fitEllipse(edges.map(({ placePx }) => placePx));
  if (!free || apart(free.centre, rim.placePx) > MOST_APART_PX) return null;
  const isShaded = edges.map(({ step }) => step > 0);
  const share = isShaded.filter(Boolean).length / edges.length;
  const changes = isShaded.filter((each, i) => each !== isShaded.at(i - 1)).length;
  if (changes !== 2 || share < SHADED[0] || share > SHADED[1]) return null;
  const sides = [1, -1].map((sign) => edges.map(({ step }) => sign * step).filter((step) => step > 0));
  return { ...rim, step: Math.min(...sides.map(median)) };
}

function nearer(
  gray: Gray,
  { placePx, radiusPx }: Ring,
  { shortBy, angleRad }: EllipseShape,
  reachPx: number,
): Ring | null {
  const outline = { centre: placePx, longPx: radiusPx, shortPx: shortBy * radiusPx, angleRad };
  const all = ellipseEdges(gray, outline, RAYS, reachPx);
  const steps = all.map(({ step }) => Math.abs(step)).sort((a, b) => a - b);
  const strong = steps[Math.floor(STRONG_FROM * steps.length)] ?? 0;
  const edges = all.filter(({ step }) => Math.abs(step) >= CUT * strong);
  if (edges.length < RAYS / 3) return null;
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const points = edges.map(({ placePx: [x, y], step }) => {
    const [dx, dy] = [x - placePx[0], y - placePx[1]];
    const at: Point = [c * dx + s * dy, (c * dy - s * dx) / shortBy];
    return { at, weight: Math.min(1, Math.abs(step) / strong) ** 2 };
  });
  const fit = fitCircle(points, { centre: [0, 0], radius: radiusPx });
  if (!fit) return null;
  const [u, v] = [fit.centre[0], shortBy * fit.centre[1]];
  return {
    placePx: [placePx[0] + c * u - s * v, placePx[1] + s * u + c * v],
    radiusPx: fit.radius,
    rmsPx: fit.rms,
    edges: edges.filter((_, i) => (fit.kept[i] as number) > KEPT),
  };
}

/** Edges come in the order of their turns. */
function mostGapRad(edges: readonly EllipseEdge[]): number {
  const turns = edges.map(({ turnRad }) => turnRad);
  const next = [...turns.slice(1), (turns[0] ?? 0) + 2 * Math.PI];
  return Math.max(...turns.map((turn, i) => (next[i] as number) - turn));
}
