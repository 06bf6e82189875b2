/**
 * A straight scale seen at an angle: where its values lie along a line.
 *
 * Model    s = (a + b v) / (1 + c v), v from the middle of the values and over half their range; robust least squares by weights of
 *          Tukey's biweight (biweight.ts)
 * Fails    null below four values or where they leave it open
 * Source   Hartley and Zisserman, Multiple View Geometry, 2.2 (projective line; from memory)
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import { biweight, spreadOf } from './biweight.ts';

export type ProjectiveScale = {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly middle: number;
  readonly half: number;
};
export type Reading = { readonly value: number; readonly s: number; readonly weight: number };

export const placeOf = ({ a, b, c, middle, half }: ProjectiveScale, value: number): number => {
  const v = (value - middle) / half;
  return (a + b * v) / (1 + c * v);
};

/** The value that lies there. */
export const valueAt = ({ a, b, c, middle, half }: ProjectiveScale, s: number): number =>
  middle + (half * (s - a)) / (b - c * s);

/** Pixels for each unit of value, there. */
export const stepAt = ({ a, b, c, middle, half }: ProjectiveScale, value: number): number => {
  const v = (value - middle) / half;
  return (b - a * c) / ((1 + c * v) ** 2 * half);
};

/** Through three values. */
export function scaleThrough(
  low: number,
  high: number,
  ends: readonly [number, number, number],
): ProjectiveScale {
  const [first, mid, last] = ends;
  // At v = -1, 0, 1: a = mid; (a - b) = first (1 - c); (a + b) = last (1 + c).
  const c = (2 * mid - first - last) / (last - first);
  const b = (last * (1 + c) - first * (1 - c)) / 2;
  return { a: mid, b, c, middle: (low + high) / 2, half: (high - low) / 2 };
}

export type ScaleFit = {
  readonly scale: ProjectiveScale;
  readonly rmsPx: number;
  readonly kept: readonly boolean[];
};

export function fitScale(start: ProjectiveScale, readings: readonly Reading[]): ScaleFit | null {
  if (readings.length < 4) return null;
  let scale = start;
  let kept: readonly boolean[] = readings.map(() => true);
  let rmsPx = 0;
  for (let round = 0; round < 8; round++) {
    const residuals = readings.map(({ value, s }) => s - placeOf(scale, value));
    const spread = spreadOf(residuals, 0.05);
    const weights = residuals.map((r, i) => biweight(r, spread) * (readings[i] as Reading).weight);
    const normal = new Float64Array(9);
    const right = new Float64Array(3);
    for (const [i, { value }] of readings.entries()) {
      const v = (value - scale.middle) / scale.half;
      const below = 1 + scale.c * v;
      const slopes = [1 / below, v / below, (-(scale.a + scale.b * v) * v) / (below * below)];
      for (let j = 0; j < 3; j++) {
        right[j] =
          (right[j] as number) + (weights[i] as number) * (slopes[j] as number) * (residuals[i] as number);
        for (let k = 0; k < 3; k++)
          normal[3 * j + k] =
            (normal[3 * j + k] as number) +
            (weights[i] as number) * (slopes[j] as number) * (slopes[k] as number);
      }
    }
    const lower = choleskyFactor(normal, 3);
    if (!lower) return null;
    const [da, db, dc] = choleskySolve(lower, 3, right) as unknown as [number, number, number];
    scale = { ...scale, a: scale.a + da, b: scale.b + db, c: scale.c + dc };
    kept = residuals.map((r) => Math.abs(r) < 3.5 * spread);
    const inside = residuals.filter((_, i) => kept[i]);
    rmsPx = Math.sqrt(inside.reduce((sum, r) => sum + r * r, 0) / Math.max(1, inside.length - 3));
  }
  return { scale, rmsPx, kept };
}
