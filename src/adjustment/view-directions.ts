/**
 * From where the pictures were taken: roughly square to the brake; and from near each other, where the problem takes them for that.
 *
 * Model    v = (x, y) of R^T e3: the camera's axis in the chamber frame, its components off the pin's axis.
 *          Each for itself: v / OFF_SQUARE, two rows a pose, taken in the camera frame, where v is as long.
 *          Near each other: mean of all v / OFF_SQUARE, two rows; d = v - v of the first pose, of Student's t in two dimensions, freedom n,
 *          width s, its negative log density as squares: d/|d| sqrt((n + 2) ln(1 + |d|^2 / (n s^2))), two rows a further pose.
 *          Filmed: mean of all v / FILMED_OFF_SQUARE, two rows; d / FILMED_APART_RAD, two rows a further pose: however many frames take part, one
 *          hand holds the phone.
 *          A component of v turns by dv_k = (R e_k x e3) . J dw.
 * Assumes  one person takes all pictures; sometimes something is in the way and the next one is taken from far off: hence the tails.
 * Source   multivariate t: Kotz, Nadarajah: Multivariate t distributions and their applications, 2004 (from memory).
 */
import { dot, type Vec3 } from '../basics/rotation.ts';
import type { Equations } from './equations.ts';
import { byRotation, type Pose } from './pose.ts';
import { FILMED_APART_RAD, FILMED_OFF_SQUARE, NEAR_FREEDOM, NEAR_RAD, OFF_SQUARE } from './priors.ts';
import type { Problem } from './problem.ts';

/** places: the first unknown of each pose. */
export function addViewDirections(
  equations: Equations,
  poses: readonly Pose[],
  places: readonly number[],
  problem: Problem,
): void {
  if (problem.places === 'own')
    for (const [i, pose] of poses.entries()) addOffSquare(equations, pose, places[i] as number, problem.hand);
  else addTogether(equations, poses, places, TOGETHER[problem.places]);
}

/** By the square of how far a direction is from the first: the residual over d, and its derivative by |d|, over |d|. */
type Apart = (squared: number) => { readonly factor: number; readonly bend: number };

/** mean: width of the mean of all directions. */
type Together = { readonly mean: number; readonly apart: Apart };

const TOGETHER: Readonly<Record<'near' | 'filmed', Together>> = {
  near: { mean: OFF_SQUARE, apart: tailed },
  filmed: { mean: FILMED_OFF_SQUARE, apart: () => ({ factor: 1 / FILMED_APART_RAD, bend: 0 }) },
};

const ACROSS: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
];
const OPTICAL_AXIS: Vec3 = [0, 0, 1];

function addOffSquare(equations: Equations, pose: Pose, at: number, hand: 1 | -1): void {
  const r = pose.rotation;
  const away: Vec3 = [hand * r[2], hand * r[5], hand * r[8]];
  for (const e of ACROSS) {
    const byW = byRotation(pose, away, e);
    for (let k = 0; k < 3; k++) equations.add(at + k, (byW[k] as number) / OFF_SQUARE);
    equations.close(dot(e, away) / OFF_SQUARE, 'camera');
  }
}

/** A component of a direction of view with its derivative by the rotation, which stands at this place of the unknowns. */
type Component = { readonly value: number; readonly by: Vec3; readonly at: number };
type Direction = readonly [Component, Component];

function addTogether(
  equations: Equations,
  poses: readonly Pose[],
  places: readonly number[],
  { mean, apart }: Together,
): void {
  const directions = poses.map((pose, i) => directionOf(pose, places[i] as number));
  const weight = 1 / (mean * directions.length);
  for (const k of [0, 1] as const) {
    let sum = 0;
    for (const { value, by, at } of directions.map((direction) => direction[k])) {
      for (let i = 0; i < 3; i++) equations.add(at + i, weight * (by[i] as number));
      sum += weight * value;
    }
    equations.close(sum, 'camera');
  }
  const [first, ...others] = directions;
  for (const other of others) addApart(equations, first as Direction, other, apart);
}

function directionOf(pose: Pose, at: number): Direction {
  const r = pose.rotation;
  const component = (value: number, column: Vec3): Component => ({
    value,
    by: byRotation(pose, column, OPTICAL_AXIS),
    at,
  });
  return [component(r[6], [r[0], r[3], r[6]]), component(r[7], [r[1], r[4], r[7]])];
}

function addApart(equations: Equations, first: Direction, other: Direction, apart: Apart): void {
  const d = [other[0].value - first[0].value, other[1].value - first[1].value] as const;
  const { factor, bend } = apart(d[0] * d[0] + d[1] * d[1]);
  for (const k of [0, 1] as const) {
    // Derivatives of factor d_k by d_0 and d_1.
    const [by0, by1] = [
      bend * d[k] * d[0] + (k === 0 ? factor : 0),
      bend * d[k] * d[1] + (k === 1 ? factor : 0),
    ];
    for (const [x, y] of [first, other])
      for (let i = 0; i < 3; i++) {
        const turned = by0 * (x.by[i] as number) + by1 * (y.by[i] as number);
        equations.add(x.at + i, x === first[0] ? -turned : turned);
      }
    equations.close(factor * d[k], 'camera');
  }
}

function tailed(squared: number): ReturnType<Apart> {
  const spread = NEAR_FREEDOM * NEAR_RAD ** 2;
  const most = (NEAR_FREEDOM + 2) / spread;
  const ratio = squared / spread;
  // By series where the other form is a difference of next to nothing.
  if (ratio < 1e-6) {
    const factor = Math.sqrt(most * (1 - ratio / 2));
    return { factor, bend: -most / (2 * factor * spread) };
  }
  const factor = Math.sqrt((most * Math.log1p(ratio)) / ratio);
  return { factor, bend: (most / (1 + ratio) - factor * factor) / (squared * factor) };
}
