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
  u: number;
  v: number;
  /** Derivatives by the point in the camera frame. */
  readonly uByPoint: [number, number, number];
  readonly vByPoint: [number, number, number];
  /** Derivatives by ln f, cx, cy, k1, k2. */
  readonly uByCamera: [number, number, number, number, number];
  readonly vByCamera: [number, number, number, number, number];
};

export function roomForProjection(): Projection {
  return {
    u: 0,
    v: 0,
    uByPoint: [0, 0, 0],
    vByPoint: [0, 0, 0],
    uByCamera: [0, 1, 0, 0, 0],
    vByCamera: [0, 0, 1, 0, 0],
  };
}

/**
 * into: overwritten and returned. Called for every mark in every iteration: new arrays, or arrays taken apart, would cost more
 * here than the projection itself.
 */
export function project(
  camera: ArrayLike<number>,
  at: number,
  point: Vec3,
  into: Projection = roomForProjection(),
): Projection {
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
  const { uByPoint, vByPoint, uByCamera, vByCamera } = into;
  into.u = (camera[at + 1] as number) + f * d * a;
  into.v = (camera[at + 2] as number) + f * d * b;
  uByPoint[0] = uByA / z;
  uByPoint[1] = uByB / z;
  uByPoint[2] = -(uByA * a + uByB * b) / z;
  vByPoint[0] = uByB / z;
  vByPoint[1] = vByB / z;
  vByPoint[2] = -(uByB * a + vByB * b) / z;
  uByCamera[0] = f * d * a;
  uByCamera[3] = f * q * a;
  uByCamera[4] = f * q * q * a;
  vByCamera[0] = f * d * b;
  vByCamera[3] = f * q * b;
  vByCamera[4] = f * q * q * b;
  return into;
}
