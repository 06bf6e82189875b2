/**
 * Which pairs of places agree on one epipolar geometry: what two cameras see of a scene that stands still, at any depths.
 *
 * Model    (x2, y2, 1) F (x1, y1, 1)^T = 0; F from eight pairs as the least eigenvector of the sum of their squared rows, places
 *          centred and scaled first; pairs drawn at random, the F that most pairs agree with
 *          distance of a pair: Sampson's, |x2 F x1| over the length of its gradient, in pixels of one picture
 * Assumes  straight lines stay straight: a lens bends them by a small part of the tolerance
 * Fails    null where fewer than eight pairs agree. Of one plane alone, or of a camera that has only turned, many F agree: what
 *          contradicts such a one is let through, and left to two-poses.ts.
 * Source   Hartley, Zisserman: Multiple View Geometry, 2nd ed., 11.1 to 11.4; Fischler, Bolles, CACM 24 (1981) (both from memory)
 */
import type { Draw } from '../basics/random.ts';
import { symmetricEigen } from '../basics/symmetric-eigen.ts';
import type { Point } from './point.ts';

export type Pair = { readonly first: Point; readonly second: Point };

/** Row by row. */
type Matrix = readonly number[];

const PAIRS_FOR_ONE = 8;
const MOST_DRAWS = 1500;
const LEAST_DRAWS = 100;
/** Chance by which at least one draw was of agreeing pairs only. */
const SURE = 0.999;

export function agreeingPairs<T extends Pair>(
  pairs: readonly T[],
  tolerancePx: number,
  draw: Draw,
): readonly T[] | null {
  if (pairs.length < PAIRS_FOR_ONE) return null;
  let best: readonly T[] = [];
  let draws = MOST_DRAWS;
  for (let tried = 0; tried < Math.max(draws, LEAST_DRAWS) && tried < MOST_DRAWS; tried++) {
    const agreeing = agreeingWith(epipolarOf(drawn(pairs, draw)), pairs, tolerancePx);
    if (agreeing.length <= best.length) continue;
    best = agreeing;
    const share = best.length / pairs.length;
    draws = Math.log(1 - SURE) / Math.log(1 - Math.min(share ** PAIRS_FOR_ONE, 1 - 1e-9));
  }
  for (let again = 0; again < 3 && best.length >= PAIRS_FOR_ONE; again++) {
    const wider = agreeingWith(epipolarOf(best), pairs, tolerancePx);
    if (wider.length <= best.length) break;
    best = wider;
  }
  return best.length < PAIRS_FOR_ONE ? null : best;
}

function drawn<T>(pairs: readonly T[], draw: Draw): readonly T[] {
  const picked = new Set<number>();
  while (picked.size < PAIRS_FOR_ONE) picked.add(Math.floor(draw.uniform(0, pairs.length)));
  return [...picked].map((index) => pairs[index] as T);
}

function agreeingWith<T extends Pair>(f: Matrix, pairs: readonly T[], tolerancePx: number): readonly T[] {
  return pairs.filter((pair) => distancePx(f, pair) < tolerancePx);
}

function distancePx(f: Matrix, { first: [x1, y1], second: [x2, y2] }: Pair): number {
  const at = (k: number) => f[k] as number;
  const [ax, ay] = [at(0) * x1 + at(1) * y1 + at(2), at(3) * x1 + at(4) * y1 + at(5)];
  const [bx, by] = [at(0) * x2 + at(3) * y2 + at(6), at(1) * x2 + at(4) * y2 + at(7)];
  const misfit = x2 * ax + y2 * ay + at(6) * x1 + at(7) * y1 + at(8);
  return Math.abs(misfit) / Math.hypot(ax, ay, bx, by);
}

function epipolarOf(pairs: readonly Pair[]): Matrix {
  const [a, b] = [frameOf(pairs.map(({ first }) => first)), frameOf(pairs.map(({ second }) => second))];
  const sums = new Array<number>(81).fill(0);
  for (const { first, second } of pairs) {
    const [u1, v1] = inFrame(a, first);
    const [u2, v2] = inFrame(b, second);
    const row = [u2 * u1, u2 * v1, u2, v2 * u1, v2 * v1, v2, u1, v1, 1];
    for (let i = 0; i < 9; i++)
      for (let j = 0; j < 9; j++)
        sums[9 * i + j] = (sums[9 * i + j] as number) + (row[i] as number) * (row[j] as number);
  }
  const least = symmetricEigen(sums, 9).vectors[0] as readonly number[];
  return unframed(least, a, b);
}

type Frame = { readonly x: number; readonly y: number; readonly scale: number };

function frameOf(places: readonly Point[]): Frame {
  const mean = (axis: 0 | 1) => places.reduce((sum, place) => sum + place[axis], 0) / places.length;
  const [x, y] = [mean(0), mean(1)];
  const reach = places.reduce((sum, [px, py]) => sum + Math.hypot(px - x, py - y), 0) / places.length;
  return { x, y, scale: 1 / Math.max(reach, 1e-9) };
}

const inFrame = ({ x, y, scale }: Frame, [px, py]: Point): Point => [(px - x) * scale, (py - y) * scale];

/** T_b^T F T_a, with T = (scale, 0, -scale x; 0, scale, -scale y; 0, 0, 1). */
function unframed(f: Matrix, a: Frame, b: Frame): Matrix {
  const rows = [0, 1, 2].map((r) => {
    const [p, q, s] = [f[3 * r] as number, f[3 * r + 1] as number, f[3 * r + 2] as number];
    return [a.scale * p, a.scale * q, s - a.scale * (a.x * p + a.y * q)];
  }) as [number[], number[], number[]];
  return [
    ...rows[0].map((value) => b.scale * value),
    ...rows[1].map((value) => b.scale * value),
    ...rows[2].map(
      (value, c) => value - b.scale * (b.x * (rows[0][c] as number) + b.y * (rows[1][c] as number)),
    ),
  ];
}
