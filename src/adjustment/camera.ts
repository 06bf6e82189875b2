/**
 * The camera: central projection with radial distortion, and its derivatives.
 *
 * Model    a = X/Z, b = Y/Z, q = a^2 + b^2, d = 1 + k1 q + k2 q^2;  u = cx + f d a,  v = cy + f d b.
 * Assumes  camera frame x right, y down, z forward (mm); u, v in pixels of the upright picture; square pixels.
 *          Unknowns in the order ln f, cx, cy, k1, k2.
 * Fails    for Z <= 0 (behind the camera): Z is held at 1 mm, which the fit leaves by itself or ends there with a large chi-square.
 * Source   Brown: Close-range camera calibration, 1971 (radial terms).
 */
import type { Vec3 } from '../basics/rotation.ts';

export const CAMERA_UNKNOWNS = 5;

export type Projection = {
  readonly u: number;
  readonly v: number;
  /** Derivatives by the point in the camera frame. */
  readonly uByPoint: Vec3;
  readonly vByPoint: Vec3;
  /** Derivatives by ln f, cx, cy, k1, k2. */
  readonly uByCamera: readonly [number, number, number, number, number];
  readonly vByCamera: readonly [number, number, number, number, number];
};

/** Called for every mark in every iteration: no arrays taken apart here, which would cost more than the projection. */
export function project(camera: ArrayLike<number>, at: number, point: Vec3): Projection {
  const f = Math.exp(camera[at] as number);
  const k1 = camera[at + 3] as number;
  const k2 = camera[at + 4] as number;
  const z = Math.max(point[2], 1);
  const a = point[0] / z;
  const b = point[1] / z;
  const q = a * a + b * b;
  const d = 1 + k1 * q + k2 * q * q;
  const dByQ = k1 + 2 * k2 * q;
  const uByA = f * (d + 2 * a * a * dByQ);
  const uByB = f * 2 * a * b * dByQ;
  const vByB = f * (d + 2 * b * b * dByQ);
  return {
    u: (camera[at + 1] as number) + f * d * a,
    v: (camera[at + 2] as number) + f * d * b,
    uByPoint: [uByA / z, uByB / z, -(uByA * a + uByB * b) / z],
    vByPoint: [uByB / z, vByB / z, -(uByB * a + vByB * b) / z],
    uByCamera: [f * d * a, 1, 0, f * q * a, f * q * q * a],
    vByCamera: [f * d * b, 0, 1, f * q * b, f * q * q * b],
  };
}
