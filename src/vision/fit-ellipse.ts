/**
 * An ellipse through points, with the uncertainty of its centre.
 *
 * Model    A x^2 + B x y + C y^2 + D x + E y = 1 about the points' middle, over their spread; the distance of a point from it to first
 *          order, |F| / |grad F| (Sampson); least squares by weights: each point's equation over its gradient, Tukey's biweight over
 *          that (biweight.ts)
 * Fails    null with fewer than six points, where they leave it open, or where what fits is no ellipse
 * Source   Sampson, Computer Graphics and Image Processing 18 (1982) 97-108 (from memory)
 */
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';
import { biweight, spreadOf } from './biweight.ts';
import type { Point } from './point.ts';

/** Half axes with the longer first; the angle of that from x. */
export type Ellipse = {
  readonly centre: Point;
  readonly longPx: number;
  readonly shortPx: number;
  readonly angleRad: number;
};
export type EllipseFit = Ellipse & {
  readonly rmsPx: number;
  readonly kept: readonly boolean[];
  /** Of the centre by the points' scatter, each for itself: mean of x and y. */
  readonly uCentrePx: number;
};

const UNKNOWNS = 5;
const ROUNDS = 12;
const LEAST_SPREAD_PX = 0.12;

export function fitEllipse(points: readonly Point[]): EllipseFit | null {
  if (points.length < UNKNOWNS + 1) return null;
  const n = points.length;
  const middle: Point = [sum(points, ([x]) => x) / n, sum(points, ([, y]) => y) / n];
  const unit = Math.sqrt(sum(points, ([x, y]) => (x - middle[0]) ** 2 + (y - middle[1]) ** 2) / n) || 1;
  const scaled = points.map(([x, y]): Point => [(x - middle[0]) / unit, (y - middle[1]) / unit]);
  let weights = scaled.map(() => 1);
  let kept = scaled.map(() => true);
  let k: readonly number[] = [];
  let lower: Float64Array | null = null;
  let residuals: number[] = [];
  let spread = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const right = new Float64Array(UNKNOWNS);
    for (const [i, point] of scaled.entries()) {
      const row = rowOf(point);
      const w = weights[i] as number;
      for (let a = 0; a < UNKNOWNS; a++) {
        right[a] = (right[a] as number) + w * (row[a] as number);
        for (let b = 0; b < UNKNOWNS; b++)
          normal[a * UNKNOWNS + b] =
            (normal[a * UNKNOWNS + b] as number) + w * (row[a] as number) * (row[b] as number);
      }
    }
    lower = choleskyFactor(normal, UNKNOWNS);
    if (!lower) return null;
    k = [...choleskySolve(lower, UNKNOWNS, right)];
    const slopes = scaled.map((point) => slopeAt(k, point));
    residuals = scaled.map((point, i) => (unit * (dot(rowOf(point), k) - 1)) / (slopes[i] as number));
    spread = spreadOf(residuals, LEAST_SPREAD_PX);
    weights = residuals.map((r, i) => biweight(r, spread) / (slopes[i] as number) ** 2);
    kept = residuals.map((r) => Math.abs(r) < 3 * spread);
  }
  const ellipse = ellipseOf(k);
  if (!ellipse || !lower) return null;
  const inside = residuals.filter((_, i) => kept[i]);
  if (inside.length < UNKNOWNS + 1) return null;
  const rmsPx = Math.sqrt(sum(inside, (r) => r * r) / (inside.length - UNKNOWNS));
  const cofactors = inverseFromLower(lowerInverse(lower, UNKNOWNS), UNKNOWNS);
  return {
    centre: [middle[0] + unit * ellipse.centre[0], middle[1] + unit * ellipse.centre[1]],
    longPx: unit * ellipse.longPx,
    shortPx: unit * ellipse.shortPx,
    angleRad: ellipse.angleRad,
    rmsPx,
    kept,
    uCentrePx: rmsPx * Math.sqrt(centreCofactor(k, cofactors)),
  };
}

const rowOf = ([x, y]: Point): readonly number[] => [x * x, x * y, y * y, x, y];
const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((total, value, i) => total + value * (b[i] as number), 0);
const sum = <T>(list: readonly T[], of: (item: T) => number) =>
  list.reduce((total, item) => total + of(item), 0);

function slopeAt(k: readonly number[], [x, y]: Point): number {
  const [a, b, c, d, e] = k as [number, number, number, number, number];
  return Math.max(1e-6, Math.hypot(2 * a * x + b * y + d, b * x + 2 * c * y + e));
}

function centreOf(k: readonly number[]): Point {
  const [a, b, c, d, e] = k as [number, number, number, number, number];
  const below = 4 * a * c - b * b;
  return [(b * e - 2 * c * d) / below, (b * d - 2 * a * e) / below];
}

function ellipseOf(k: readonly number[]): Ellipse | null {
  const [a, b, c, d, e] = k as [number, number, number, number, number];
  if (!(4 * a * c - b * b > 1e-9)) return null;
  const centre = centreOf(k);
  const level =
    1 - (a * centre[0] ** 2 + b * centre[0] * centre[1] + c * centre[1] ** 2 + d * centre[0] + e * centre[1]);
  const [mean, half] = [(a + c) / 2, Math.hypot((a - c) / 2, b / 2)];
  const [most, least] = [level / (mean - half), level / (mean + half)];
  if (!(least > 0 && most > 0)) return null;
  // The long axis lies where the form is least.
  return {
    centre,
    longPx: Math.sqrt(most),
    shortPx: Math.sqrt(least),
    angleRad: Math.atan2(b, a - c) / 2 + Math.PI / 2,
  };
}

/** Derivatives of the centre by small differences, through the cofactors. */
function centreCofactor(k: readonly number[], cofactors: Float64Array): number {
  const here = centreOf(k);
  const slopes = k.map((value, i) => {
    const step = 1e-6 * Math.max(1, Math.abs(value));
    const there = centreOf(k.map((each, j) => (j === i ? each + step : each)));
    return [(there[0] - here[0]) / step, (there[1] - here[1]) / step] as const;
  });
  let total = 0;
  for (let i = 0; i < UNKNOWNS; i++)
    for (let j = 0; j < UNKNOWNS; j++) {
      const q = cofactors[i * UNKNOWNS + j] as number;
      const [a, b] = [slopes[i], slopes[j]] as [readonly [number, number], readonly [number, number]];
      total += q * (a[0] * b[0] + a[1] * b[1]);
    }
  // The equations' weights are over squared slopes in scaled lengths: the cofactors are of residuals in those.
  return Math.max(0, total / 2);
}
