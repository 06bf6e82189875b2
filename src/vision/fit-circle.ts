/**
 * A circle through points of unlike weight.
 *
 * Model    the distance of a point from the middle, less the radius; least squares by Gauss-Newton, each point by its own weight times
 *          Tukey's biweight (biweight.ts)
 * Fails    null where the points leave it open
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import { biweight, spreadOf } from './biweight.ts';
import type { Point } from './point.ts';

export type CircleFit = {
  readonly centre: Point;
  readonly radius: number;
  /** By the points' own weights, those far off among them. */
  readonly rms: number;
  /** Of each point by how far off it is, 0 to 1. */
  readonly kept: readonly number[];
};
export type Weighted = { readonly at: Point; readonly weight: number };

const UNKNOWNS = 3;
const ROUNDS = 15;
const LEAST_SPREAD = 0.1;

export function fitCircle(
  points: readonly Weighted[],
  start: Pick<CircleFit, 'centre' | 'radius'>,
): CircleFit | null {
  let { centre, radius } = start;
  let kept: readonly number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const off = points.map(({ at }) => Math.hypot(at[0] - centre[0], at[1] - centre[1]) - radius);
    const spread = spreadOf(off, LEAST_SPREAD);
    kept = off.map((each) => biweight(each, spread));
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const right = new Float64Array(UNKNOWNS);
    for (const [i, { at, weight }] of points.entries()) {
      const away = Math.max(1e-9, Math.hypot(at[0] - centre[0], at[1] - centre[1]));
      const row = [-(at[0] - centre[0]) / away, -(at[1] - centre[1]) / away, -1];
      const w = weight * (kept[i] as number);
      for (let a = 0; a < UNKNOWNS; a++) {
        right[a] = (right[a] as number) - w * (row[a] as number) * (off[i] as number);
        for (let b = 0; b < UNKNOWNS; b++)
          normal[a * UNKNOWNS + b] =
            (normal[a * UNKNOWNS + b] as number) + w * (row[a] as number) * (row[b] as number);
      }
    }
    const lower = choleskyFactor(normal, UNKNOWNS);
    if (!lower) return null;
    const [dx, dy, dr] = choleskySolve(lower, UNKNOWNS, right) as unknown as [number, number, number];
    centre = [centre[0] + dx, centre[1] + dy];
    radius += dr;
    if (!(radius > 0)) return null;
  }
  const [squares, weights] = points.reduce(
    ([sum, all], { at, weight }) => [
      sum + weight * (Math.hypot(at[0] - centre[0], at[1] - centre[1]) - radius) ** 2,
      all + weight,
    ],
    [0, 0],
  );
  return { centre, radius, rms: Math.sqrt(squares / weights), kept };
}
