/**
 * How the second camera stood to the first, from pairs of places, and with it what contradicts it and how far off a place is.
 *
 * Model    x2 . (t x R x1) = 0 with x = ((p - c) / f, 1), radial distortion taken out: x / (1 + k1 q), q = |x|^2;
 *          unknown: R (rotation second_from_first), the direction of t, ln f of both, k1 of both; Sampson distance in pixels;
 *          each weighs by Cauchy's 1 / (1 + (d / tolerance)^2), so that the few that disagree do not pull
 *          inverse distance, in units of the baseline: by least squares from Z1 R x1 + t = Z2 x2
 * Assumes  one lens for both pictures, its centre in their middle; cameras that look the same way within some tens of degrees
 * Fails    'two-poses/none' where no fit settles, or fewer than eight pairs agree and are in front of both cameras: of several fits
 *          the one with most such pairs is taken, since few surfaces leave others that fit as well
 * Source   Hartley, Zisserman: Multiple View Geometry, 2nd ed., 9.6, 11.4 (from memory)
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { cross, type Mat3, rotate, rotationFromVector, type Vec3 } from '../basics/rotation.ts';
import { descend, type Squares } from './descend.ts';
import type { Pair } from './epipolar.ts';
import type { Point } from './point.ts';

export type Lens = { readonly focalPx: number; readonly middlePx: Point };
export type TwoLenses = { readonly first: Lens; readonly second: Lens };

export type TwoPoses = {
  readonly lenses: TwoLenses;
  readonly rotation: Mat3;
  /** Of length one: from the second camera to the first, in the second's frame. */
  readonly baseline: Vec3;
  readonly k1: number;
};

export type NoTwoPoses = { readonly code: 'two-poses/none' };

const LEAST_PAIRS = 8;
/** Share of the agreeing pairs that must be in front: what is far off may come out a little behind. */
const MOSTLY = 0.75;
/** Rotation vector, two turns of the baseline, ln f, k1. */
const UNKNOWNS = 7;
/** What is known of the lens before: focal lengths of files without one are off by a quarter. */
const U_LN_FOCAL = 0.15;
const U_K1 = 0.03;
const BASELINES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
  [0.7, 0.7, 0],
  [0.7, -0.7, 0],
];

type Model = { readonly lenses: TwoLenses; readonly start: Vec3 };

export function twoPoses(
  pairs: readonly Pair[],
  lenses: TwoLenses,
  turnRad: number,
  tolerancePx: number,
): Result<TwoPoses, NoTwoPoses> {
  if (pairs.length < LEAST_PAIRS) return fail({ code: 'two-poses/none' });
  let best: { readonly poses: TwoPoses; readonly inFront: number } | null = null;
  for (const start of BASELINES)
    for (const pan of [false, true]) {
      const turn = pan ? panBetween(pairs, lenses) : [0, 0];
      const poses = settled({ lenses, start }, [...turn, turnRad, 0, 0, 0, 0], pairs, tolerancePx);
      if (!poses) continue;
      const agreeing = pairs.filter((pair) => Math.abs(misfitPx(poses, pair)) < 2 * tolerancePx);
      const inFront = agreeing.filter((pair) => inverseDistance(poses, pair) > 0).length;
      const facing = 2 * inFront >= agreeing.length ? poses : turnedRound(poses);
      const most = Math.max(inFront, agreeing.length - inFront);
      if (most < MOSTLY * agreeing.length) continue;
      if (!best || most > best.inFront) best = { poses: facing, inFront: most };
    }
  return best && best.inFront >= LEAST_PAIRS ? ok(best.poses) : fail({ code: 'two-poses/none' });
}

/** Null where the steps do not end. */
function settled(
  model: Model,
  start: readonly number[],
  pairs: readonly Pair[],
  tolerancePx: number,
): TwoPoses | null {
  let x: Float64Array = Float64Array.from(start);
  let last = false;
  // Near a wrong start nothing agrees to a part of a pixel: wide at first.
  for (const wider of [30, 5, 1]) {
    const fitted = descend(x, squaresOver(model, pairs, wider * tolerancePx));
    last = fitted.ok;
    if (fitted.ok) x = fitted.value.x;
  }
  return last ? posesFrom(model, x) : null;
}

/** Both directions of the baseline fit alike; things are in front of the cameras. */
function turnedRound(poses: TwoPoses): TwoPoses {
  const [x, y, z] = poses.baseline;
  return { ...poses, baseline: [-x, -y, -z] };
}

/** Turns about x and y that would shift the picture as it has shifted, were all far away. */
function panBetween(pairs: readonly Pair[], { second: { focalPx } }: TwoLenses): readonly [number, number] {
  const shift = (axis: 0 | 1) =>
    pairs.reduce((sum, { first, second }) => sum + second[axis] - first[axis], 0) / pairs.length / focalPx;
  return [-shift(1), shift(0)];
}

/** How far a pair is from agreeing, with its sign. */
export function misfitPx(poses: TwoPoses, { first, second }: Pair): number {
  const { lenses, rotation, baseline, k1 } = poses;
  const [a, b] = [ray(lenses.first, k1, first), ray(lenses.second, k1, second)];
  const turned = rotate(rotation, a);
  const line = cross(baseline, turned);
  const back = cross(b, baseline);
  const [bx, by] = [
    rotation[0] * back[0] + rotation[3] * back[1] + rotation[6] * back[2],
    rotation[1] * back[0] + rotation[4] * back[1] + rotation[7] * back[2],
  ];
  const misfit = b[0] * line[0] + b[1] * line[1] + b[2] * line[2];
  const slope = Math.hypot(
    line[0] / lenses.second.focalPx,
    line[1] / lenses.second.focalPx,
    bx / lenses.first.focalPx,
    by / lenses.first.focalPx,
  );
  return misfit / Math.max(slope, 1e-300);
}

/** In front of the second camera, one over the distance in baselines; zero is infinitely far. */
export function inverseDistance(
  { lenses, rotation, baseline, k1 }: TwoPoses,
  { first, second }: Pair,
): number {
  const b = ray(lenses.second, k1, second);
  const across = cross(b, rotate(rotation, ray(lenses.first, k1, first)));
  const along = cross(b, baseline);
  return -dot(across, along) / Math.max(dot(along, along), 1e-300);
}

/** By how much a pixel of error changes the inverse distance. */
export function inverseDistancePerPx({ lenses, baseline, k1 }: TwoPoses, { second }: Pair): number {
  const along = cross(ray(lenses.second, k1, second), baseline);
  return 1 / (lenses.second.focalPx * Math.max(Math.hypot(...along), 1e-9));
}

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function ray({ focalPx, middlePx }: Lens, k1: number, [xPx, yPx]: Point): Vec3 {
  const [x, y] = [(xPx - middlePx[0]) / focalPx, (yPx - middlePx[1]) / focalPx];
  const straight = 1 / (1 + k1 * (x * x + y * y));
  return [x * straight, y * straight, 1];
}

function posesFrom({ lenses, start }: Model, x: Float64Array): TwoPoses {
  const at = (k: number) => x[k] as number;
  const side: Vec3 = Math.abs(start[2]) > 0.5 ? [1, 0, 0] : [0, 0, 1];
  const other = cross(start, side);
  const t = start.map((value, i) => value + at(3) * (side[i] as number) + at(4) * (other[i] as number));
  const length = Math.hypot(...t);
  const scaled = ({ focalPx, middlePx }: Lens) => ({ focalPx: focalPx * Math.exp(at(5)), middlePx });
  return {
    lenses: { first: scaled(lenses.first), second: scaled(lenses.second) },
    rotation: rotationFromVector([at(0), at(1), at(2)]),
    baseline: t.map((value) => value / length) as unknown as Vec3,
    k1: at(6),
  };
}

function squaresOver(model: Model, pairs: readonly Pair[], tolerancePx: number) {
  const step = 1e-6;
  return (x: Float64Array): Squares => {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const gradient = new Float64Array(UNKNOWNS);
    let sum = 0;
    const add = (residual: number, slopes: readonly number[], weight: number) =>
      slopes.forEach((si, i) => {
        gradient[i] = (gradient[i] as number) + weight * si * residual;
        slopes.forEach((sj, j) => {
          normal[i * UNKNOWNS + j] = (normal[i * UNKNOWNS + j] as number) + weight * si * sj;
        });
      });
    const here = posesFrom(model, x);
    const moved = Array.from({ length: UNKNOWNS }, (_, k) =>
      posesFrom(
        model,
        x.map((value, i) => (i === k ? value + step : value)),
      ),
    );
    for (const pair of pairs) {
      const residual = misfitPx(here, pair) / tolerancePx;
      const slopes = moved.map((poses) => (misfitPx(poses, pair) / tolerancePx - residual) / step);
      sum += Math.log1p(residual * residual);
      add(residual, slopes, 1 / (1 + residual * residual));
    }
    const priors: readonly (readonly [number, number])[] = [
      [5, U_LN_FOCAL],
      [6, U_K1],
    ];
    for (const [k, u] of priors) {
      const residual = (x[k] as number) / u;
      sum += residual * residual;
      add(
        residual,
        Array.from({ length: UNKNOWNS }, (_, i) => (i === k ? 1 / u : 0)),
        1,
      );
    }
    return { sum, normal, gradient };
  };
}
