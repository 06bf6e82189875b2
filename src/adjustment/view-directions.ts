/**
 * From where the pictures were taken: roughly square to the brake, and each from nearly the same place as the first.
 *
 * Model    v = (x, y) of R^T e3: the camera's axis in the chamber frame, its components off the pin's axis.
 *          Mean of all v / OFF_SQUARE: two rows.
 *          d = v - v of the first picture, of Student's t in two dimensions, degrees of freedom n = APART_FREEDOM, width s = APART_RAD;
 *          its negative log density as squares: d/|d| sqrt((n + 2) ln(1 + |d|^2 / (n s^2))), two rows for each further picture.
 *          A component of v turns by dv_k = (R e_k x e3) . J dw.
 * Assumes  one person takes all pictures; sometimes something is in the way and the next one is taken from far off: hence the tails.
 * Source   multivariate t: Kotz, Nadarajah: Multivariate t distributions and their applications, 2004 (from memory).
 */
import type { Vec3 } from '../basics/rotation.ts';
import type { Rows } from './equations.ts';
import { byRotation, type Pose } from './pose.ts';
import { APART_FREEDOM, APART_RAD, OFF_SQUARE } from './priors.ts';

const OPTICAL_AXIS: Vec3 = [0, 0, 1];

/** A component of a direction of view with its derivative by the rotation, which stands at this place of the unknowns. */
type Component = { readonly value: number; readonly by: Vec3; readonly at: number };
type Direction = readonly [Component, Component];

/** places: the first unknown of each pose. */
export function addViewDirections(equations: Rows, poses: readonly Pose[], places: readonly number[]): void {
  const directions = poses.map((pose, i) => directionOf(pose, places[i] as number));
  const weight = 1 / (OFF_SQUARE * directions.length);
  for (const k of [0, 1] as const) {
    let sum = 0;
    for (const direction of directions) sum += added(equations, direction[k], weight);
    equations.close(sum, 'camera');
  }
  const [first, ...others] = directions;
  for (const other of others) addApart(equations, first as Direction, other);
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

/** The weighted value; its derivatives are added to the row that is open. */
function added(equations: Rows, { value, by, at }: Component, weight: number): number {
  for (let k = 0; k < 3; k++) equations.add(at + k, weight * (by[k] as number));
  return weight * value;
}

function addApart(equations: Rows, first: Direction, other: Direction): void {
  const d = [other[0].value - first[0].value, other[1].value - first[1].value] as const;
  const { factor, bend } = tailed(d[0] * d[0] + d[1] * d[1]);
  for (const k of [0, 1] as const) {
    // Derivative of factor d_k by d_0 and d_1.
    const byD = ([0, 1] as const).map((j) => bend * d[k] * d[j] + (j === k ? factor : 0));
    for (const direction of [first, other])
      for (let i = 0; i < 3; i++) {
        const turned =
          (byD[0] as number) * (direction[0].by[i] as number) +
          (byD[1] as number) * (direction[1].by[i] as number);
        equations.add(direction[0].at + i, direction === first ? -turned : turned);
      }
    equations.close(factor * d[k], 'camera');
  }
}

/** factor: residual over d; bend: its derivative by |d|, over |d|. */
function tailed(squared: number): { readonly factor: number; readonly bend: number } {
  const n = APART_FREEDOM;
  const ratio = squared / (n * APART_RAD ** 2);
  const scale = (n + 2) / (n * APART_RAD ** 2);
  // ln(1 + q) / q and the slope of its root, by series where q is next to nothing.
  if (ratio < 1e-6) {
    const factor = Math.sqrt(scale * (1 - ratio / 2));
    return { factor, bend: (-scale / (2 * factor)) * (1 / (n * APART_RAD ** 2)) };
  }
  const factor = Math.sqrt((scale * Math.log1p(ratio)) / ratio);
  const slope = (scale / (1 + ratio) - factor * factor) / squared;
  return { factor, bend: slope / factor };
}
