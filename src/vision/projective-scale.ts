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
  const count = readings.length;
  if (count < 4) return null;
  let scale = start;
  let spread = 0;
  const residuals = new Float64Array(count);
  const normal = new Float64Array(9);
  const right = new Float64Array(3);
  const slopes = new Float64Array(3);
  for (let round = 0; round < 8; round++) {
    for (let i = 0; i < count; i++) {
      const { value, s } = readings[i] as Reading;
      residuals[i] = s - placeOf(scale, value);
    }
    spread = spreadOf(residuals, 0.05);
    normal.fill(0);
    right.fill(0);
    const { a, b, c, middle, half } = scale;
    for (let i = 0; i < count; i++) {
      const { value, weight } = readings[i] as Reading;
      const residual = residuals[i] as number;
      const w = biweight(residual, spread) * weight;
      const v = (value - middle) / half;
      const below = 1 + c * v;
      slopes[0] = 1 / below;
      slopes[1] = v / below;
      slopes[2] = (-(a + b * v) * v) / (below * below);
      for (let j = 0; j < 3; j++) {
        const wj = w * (slopes[j] as number);
        right[j] = (right[j] as number) + wj * residual;
        for (let k = 0; k < 3; k++)
          normal[3 * j + k] = (normal[3 * j + k] as number) + wj * (slopes[k] as number);
      }
    }
    const lower = choleskyFactor(normal, 3);
    if (!lower) return null;
    const off = choleskySolve(lower, 3, right);
    scale = { a: a + (off[0] as number), b: b + (off[1] as number), c: c + (off[2] as number), middle, half };
  }
  const kept: boolean[] = [];
  let [inside, square] = [0, 0];
  for (const residual of residuals) {
    const isKept = Math.abs(residual) < 3.5 * spread;
    kept.push(isKept);
    if (!isKept) continue;
    inside++;
    square += residual * residual;
  }
  return { scale, rmsPx: Math.sqrt(square / Math.max(1, inside - 3)), kept };
}
