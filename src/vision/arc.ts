/**
 * The near half of a circle's outline seen at an angle, and such an arc through points.
 *
 * Model    p(w) = c + short cos w e2 + long sin w e1, e1 and e2 square to each other; w = 0 is the vertex, |w| up to a quarter turn the
 *          near half. Least squares of the distances along the normals by Gauss-Newton in centre, half axes and turn; Tukey's biweight
 *          (biweight.ts) times the points' own weights
 * Fails    null where the points leave it open, or it runs away
 */
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';
import { biweight, spreadOf } from './biweight.ts';
import type { Point } from './point.ts';

/** turnRad: direction of e2, from the centre to the vertex. */
export type Arc = {
  readonly centre: Point;
  readonly longPx: number;
  readonly shortPx: number;
  readonly turnRad: number;
};
export type ArcFit = {
  readonly arc: Arc;
  readonly rmsPx: number;
  readonly kept: readonly boolean[];
  /** Signed, outwards. */
  readonly residuals: readonly number[];
  /** For points of unit variance; centre x and y, long, short, turn. */
  readonly cofactors: Float64Array;
};

const UNKNOWNS = 5;
const ROUNDS = 14;
const LEAST_SPREAD_PX = 0.12;

export function arcPoint({ centre, longPx, shortPx, turnRad }: Arc, w: number): Point {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const [v, u] = [longPx * Math.sin(w), shortPx * Math.cos(w)];
  return [centre[0] + c * u - s * v, centre[1] + s * u + c * v];
}

/** Outwards, of length one. */
export function arcNormal({ longPx, shortPx, turnRad }: Arc, w: number): Point {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const [v, u] = [shortPx * Math.sin(w), longPx * Math.cos(w)];
  const size = Math.hypot(u, v) || 1;
  return [(c * u - s * v) / size, (s * u + c * v) / size];
}

/** w of the point of the arc that is nearest to a point not far from it. */
export function arcAngle(arc: Arc, [x, y]: Point): number {
  const { centre, longPx, shortPx, turnRad } = arc;
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const [dx, dy] = [x - centre[0], y - centre[1]];
  const [u, v] = [c * dx + s * dy, -s * dx + c * dy];
  let w = Math.atan2(v / longPx, u / shortPx);
  for (let i = 0; i < 3; i++) {
    const [cw, sw] = [Math.cos(w), Math.sin(w)];
    const [du, dv] = [u - shortPx * cw, v - longPx * sw];
    const slope = -shortPx * sw * du + longPx * cw * dv;
    const square = (shortPx * sw) ** 2 + (longPx * cw) ** 2;
    w += Math.max(-0.2, Math.min(0.2, slope / square));
  }
  return w;
}

export function fitArc(
  start: Arc,
  points: readonly { readonly placePx: Point; readonly weight: number }[],
): ArcFit | null {
  if (points.length < 2 * UNKNOWNS) return null;
  let arc = start;
  let weights = points.map(({ weight }) => weight);
  let residuals: number[] = [];
  let spread = 0;
  let lower: Float64Array | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const right = new Float64Array(UNKNOWNS);
    const angles = points.map(({ placePx }) => arcAngle(arc, placePx));
    residuals = points.map(({ placePx }, i) => distance(arc, angles[i] as number, placePx));
    if (round > 0) {
      spread = spreadOf(residuals, LEAST_SPREAD_PX);
      weights = points.map(({ weight }, i) => weight * biweight(residuals[i] as number, spread));
    }
    for (const [i, w] of angles.entries()) {
      const row = rowAt(arc, w);
      const weight = weights[i] as number;
      for (let a = 0; a < UNKNOWNS; a++) {
        right[a] = (right[a] as number) + weight * (row[a] as number) * (residuals[i] as number);
        for (let b = 0; b <= a; b++)
          normal[a * UNKNOWNS + b] =
            (normal[a * UNKNOWNS + b] as number) + weight * (row[a] as number) * (row[b] as number);
      }
    }
    lower = choleskyFactor(normal, UNKNOWNS);
    if (!lower) return null;
    const step = choleskySolve(lower, UNKNOWNS, right);
    const [dx, dy, dl, ds, dt] = step as unknown as [number, number, number, number, number];
    const { centre, longPx, shortPx, turnRad } = arc;
    arc = {
      centre: [centre[0] + dx, centre[1] + dy],
      longPx: longPx + dl,
      shortPx: shortPx + ds,
      turnRad: turnRad + Math.max(-0.1, Math.min(0.1, dt)),
    };
    if (!(arc.shortPx > 2 && arc.longPx > arc.shortPx && arc.longPx < 3 * start.longPx)) return null;
  }
  if (!lower) return null;
  const kept = residuals.map((r) => Math.abs(r) < 3 * spread);
  const inside = residuals.filter((_, i) => kept[i]);
  const squares = inside.reduce((sum, r) => sum + r * r, 0);
  return {
    arc,
    rmsPx: Math.sqrt(squares / Math.max(1, inside.length - UNKNOWNS)),
    kept,
    residuals,
    cofactors: inverseFromLower(lowerInverse(lower, UNKNOWNS), UNKNOWNS),
  };
}

function distance(arc: Arc, w: number, [x, y]: Point): number {
  const [[px, py], [nx, ny]] = [arcPoint(arc, w), arcNormal(arc, w)];
  return (x - px) * nx + (y - py) * ny;
}

/** How far the arc moves along its normal there, by each unknown. */
function rowAt(arc: Arc, w: number): readonly number[] {
  const { turnRad, shortPx, longPx } = arc;
  const [nx, ny] = arcNormal(arc, w);
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const [u, v] = [shortPx * Math.cos(w), longPx * Math.sin(w)];
  const turned: Point = [-s * u - c * v, c * u - s * v];
  return [
    nx,
    ny,
    Math.sin(w) * (-s * nx + c * ny),
    Math.cos(w) * (c * nx + s * ny),
    turned[0] * nx + turned[1] * ny,
  ];
}
