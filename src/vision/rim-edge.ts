/**
 * The edge along an arc, to a part of a pixel, and the arc through it.
 *
 * Model    across the arc, at rays along it, brightness averaged over a few pixels along and the derivative of a Gaussian across; the
 *          sign of the step by what most rays of a piece show; the steepest place of that sign within reach, then an arc through those
 *          (arc.ts); again, nearer, and farther towards the ends
 * Assumes  a step of brightness, its sign the same for a piece of the way
 * Fails    null where too few places show one, or no arc goes through them
 */
import { type Arc, type ArcFit, arcNormal, arcPoint, fitArc } from './arc.ts';
import type { Gray } from './gray.ts';
import { isInPicture, levelAt } from './level-at.ts';
import type { Point } from './point.ts';

/** offPx: from the arc, outwards. */
export type RimPoint = {
  readonly w: number;
  readonly placePx: Point;
  readonly offPx: number;
  readonly steep: number;
};
export type Rim = {
  readonly arc: Arc;
  readonly fit: ArcFit;
  /** Those that lie on the arc. */
  readonly points: readonly RimPoint[];
  /** Of the rays, those. */
  readonly share: number;
};

/** Towards the ends the band's side and its lugs come too near. */
export const RIM_END_RAD = 1.25;
const PIECES = 12;
/** Rays in each piece: few while it is rough. */
const FEW = 5;
const MANY = 11;
/** Over half the long axis. */
const FIRST_REACH = 0.022;
/** Of 255 levels a pixel. */
const LEAST_STEEP = 1.2;
const CLEAR_STEEP = 6;
/** Of the rays: with fewer it is no rim. */
const LEAST_SEEN = 0.5;
const ON_ARC_PX = 1;

/** isNear: the start is known to lie within some pixels all along. */
export function rimAlong(gray: Gray, start: Arc, isNear = false): Rim | null {
  const first = Math.max(4, FIRST_REACH * start.longPx);
  const rounds = [
    { reachPx: first, endRad: 0.9, rays: FEW },
    { reachPx: 0.7 * first, endRad: 1.05, rays: FEW },
    { reachPx: Math.max(2.2, 0.4 * first), endRad: 1.2, rays: FEW },
    { reachPx: 2, endRad: RIM_END_RAD, rays: FEW },
    { reachPx: 2, endRad: RIM_END_RAD, rays: MANY },
    { reachPx: 2, endRad: RIM_END_RAD, rays: MANY },
  ];
  let arc = start;
  let fit: ArcFit | null = null;
  let seen: readonly RimPoint[] = [];
  for (const round of isNear ? rounds.slice(2) : rounds) {
    seen = edgesNear(gray, arc, round);
    if (seen.length < LEAST_SEEN * PIECES * round.rays) return null;
    fit = fitArc(
      arc,
      seen.map(({ placePx, steep }) => ({ placePx, weight: Math.min(1, steep / CLEAR_STEEP) })),
    );
    if (!fit) return null;
    arc = fit.arc;
  }
  if (!fit) return null;
  const { residuals } = fit;
  const near = Math.max(ON_ARC_PX, 2.5 * fit.rmsPx);
  const points = seen.flatMap((point, i) => {
    const offPx = residuals[i] as number;
    return Math.abs(offPx) < near ? [{ ...point, offPx }] : [];
  });
  return { arc, fit, points, share: points.length / (PIECES * MANY) };
}

type Round = { readonly reachPx: number; readonly endRad: number; readonly rays: number };
type Ray = { readonly w: number; readonly at: Point; readonly normal: Point; readonly steep: Float64Array };

const STEP_PX = 0.5;
const WIDTH_PX = 1.1;
const ALONG_PX = [-1.5, -0.5, 0.5, 1.5] as const;
const KERNEL_HALF = Math.ceil((3 * WIDTH_PX) / STEP_PX);
const KERNEL = derivative();

/** Of levels STEP_PX apart: their slope a pixel. */
function derivative(): Float64Array {
  const raw = Float64Array.from({ length: 2 * KERNEL_HALF + 1 }, (_, i) => {
    const x = ((i - KERNEL_HALF) * STEP_PX) / WIDTH_PX;
    return x * Math.exp((-x * x) / 2);
  });
  const sum = raw.reduce((total, v, i) => total + v * (i - KERNEL_HALF) * STEP_PX, 0);
  return raw.map((v) => v / sum);
}

function edgesNear(gray: Gray, arc: Arc, { reachPx, endRad, rays: count }: Round): readonly RimPoint[] {
  const half = Math.ceil(reachPx / STEP_PX) + 1;
  const seen: RimPoint[] = [];
  for (let piece = 0; piece < PIECES; piece++) {
    const rays: Ray[] = [];
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const w = endRad * ((2 * (piece * count + i + 0.5)) / (PIECES * count) - 1);
      const [at, normal] = [arcPoint(arc, w), arcNormal(arc, w)];
      if (!isInPicture(gray, at[0], at[1], reachPx + 6)) continue;
      const steep = steepAcross(gray, at, normal, half);
      rays.push({ w, at, normal, steep });
      sum += Math.max(0, ...steep) + Math.min(0, ...steep);
    }
    for (const ray of rays) {
      const point = steepest(ray, Math.sign(sum) || 1, half);
      if (point) seen.push(point);
    }
  }
  return seen;
}

function steepAcross(gray: Gray, [x, y]: Point, [nx, ny]: Point, half: number): Float64Array {
  const reach = half + KERNEL_HALF;
  const level = new Float64Array(2 * reach + 1);
  for (let i = 0; i < level.length; i++) {
    const d = (i - reach) * STEP_PX;
    for (const along of ALONG_PX)
      level[i] = (level[i] as number) + levelAt(gray, x + d * nx - along * ny, y + d * ny + along * nx);
  }
  const steep = new Float64Array(2 * half + 1);
  for (let i = 0; i < steep.length; i++) {
    let sum = 0;
    for (let k = 0; k < KERNEL.length; k++) sum += (KERNEL[k] as number) * (level[i + k] as number);
    steep[i] = sum / ALONG_PX.length;
  }
  return steep;
}

function steepest({ w, at, normal, steep }: Ray, sign: number, half: number): RimPoint | null {
  let [place, most] = [0, LEAST_STEEP];
  let found = false;
  for (let i = 1; i < steep.length - 1; i++) {
    const b = sign * (steep[i] as number);
    if (b < most) continue;
    const [a, c] = [sign * (steep[i - 1] as number), sign * (steep[i + 1] as number)];
    if (b < a || b <= c) continue;
    place = (i - half + (a - c) / (2 * (a - 2 * b + c) || -1)) * STEP_PX;
    most = b;
    found = true;
  }
  if (!found) return null;
  return { w, placePx: [at[0] + place * normal[0], at[1] + place * normal[1]], offPx: 0, steep: most };
}
