/**
 * What moves a patch of a picture: the sums that turn residuals of its pixels into a shift and a change of shape.
 *
 * Model    slopes S by shift (2) and by shape (2 x 2, in radii), less what gain and offset explain; N = sum w S S^T, and on the
 *          shape's diagonal what holds it near the expected one: (noise / (change x radius))^2
 * Fails    null where the patch shows nothing that holds a place
 */
import { choleskyFactor, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';

export const SHAPE = 6;

export type Solver = {
  /** N^-1, row by row. */
  readonly cofactors: Float64Array;
  /** Of the shift alone: x by x, x by y, y by y. */
  readonly shiftCofactors: readonly [number, number, number];
  readonly shapeHold: number;
};

/** Levels: noise of a coded clip and what the model leaves out. */
const NOISE = 2;
/** Standard deviation of a shape from the expected one. */
const CHANGE = 0.04;

export function solverOf(
  slopes: Float32Array,
  weights: Float32Array,
  count: number,
  radiusPx: number,
): Solver | null {
  const normal = new Float64Array(SHAPE * SHAPE);
  for (let k = 0; k < SHAPE; k++)
    for (let j = 0; j <= k; j++) {
      let sum = 0;
      for (let i = 0, at = 0; i < count; i++, at += SHAPE)
        sum += (weights[i] as number) * (slopes[at + k] as number) * (slopes[at + j] as number);
      normal[k * SHAPE + j] = sum;
    }
  const [xx, xy, yy] = [normal[0], normal[SHAPE], normal[SHAPE + 1]] as [number, number, number];
  const size = xx * yy - xy * xy;
  if (!(size > 1e-3 * xx * yy)) return null;
  const shapeHold = (NOISE / (CHANGE * radiusPx)) ** 2;
  for (let k = 2; k < SHAPE; k++) normal[k * SHAPE + k] = (normal[k * SHAPE + k] as number) + shapeHold;
  const lower = choleskyFactor(normal, SHAPE);
  if (!lower) return null;
  const cofactors = inverseFromLower(lowerInverse(lower, SHAPE), SHAPE);
  return { cofactors, shiftCofactors: [yy / size, -xy / size, xx / size], shapeHold };
}

/** Takes out of the slopes what a gain and an offset would explain; mean and variance of the levels come back. */
export function lessLight(slopes: Float32Array, levels: Float32Array, weights: Float32Array, count: number) {
  let sum = 0;
  let level = 0;
  let square = 0;
  for (let i = 0; i < count; i++) {
    const w = weights[i] as number;
    const t = levels[i] as number;
    sum += w;
    level += w * t;
    square += w * t * t;
  }
  const mean = level / sum;
  const variance = square / sum - mean * mean;
  for (let k = 0; k < SHAPE; k++) {
    let s = 0;
    let st = 0;
    for (let i = 0; i < count; i++) {
      const ws = (weights[i] as number) * (slopes[i * SHAPE + k] as number);
      s += ws;
      st += ws * ((levels[i] as number) - mean);
    }
    const offset = s / sum;
    const gain = st / (variance * sum);
    for (let i = 0; i < count; i++)
      slopes[i * SHAPE + k] =
        (slopes[i * SHAPE + k] as number) - offset - gain * ((levels[i] as number) - mean);
  }
  return { weightSum: sum, variance };
}
