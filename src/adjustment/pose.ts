/**
 * A camera pose: camera_from_chamber, with derivatives.
 *
 * Model    Xc = exp([w]x) R0 X + t; unknowns w (rad), t (mm); R0 is the start rotation and stays fixed during a fit,
 *          so that w is small and the exponential map is far from its singular point.
 *          dXc/dw = -[R X]x J(w), dXc/dt = I, dXc/dX = R.
 */
import {
  leftJacobian,
  type Mat3,
  multiply,
  rotate,
  rotationFromVector,
  transpose,
  type Vec3,
} from '../basics/rotation.ts';

export const POSE_UNKNOWNS = 6;

export type Pose = {
  readonly rotation: Mat3;
  readonly translation: Vec3;
  readonly jacobian: Mat3;
};

export function poseAt(x: ArrayLike<number>, at: number, start: Mat3): Pose {
  const w: Vec3 = [x[at] as number, x[at + 1] as number, x[at + 2] as number];
  return {
    rotation: multiply(rotationFromVector(w), start),
    translation: [x[at + 3] as number, x[at + 4] as number, x[at + 5] as number],
    jacobian: leftJacobian(w),
  };
}

/** In the chamber frame: -R^T t. */
export function cameraPlace({ rotation, translation: t }: Pick<Pose, 'rotation' | 'translation'>): Vec3 {
  return rotate(transpose(rotation), [-t[0], -t[1], -t[2]]);
}

/** Camera point, and row . dXc/dw for a row vector given on the camera point (for the chain rule). */
export function transformed(pose: Pose, point: Vec3): { readonly turned: Vec3; readonly camera: Vec3 } {
  const turned = rotate(pose.rotation, point);
  const t = pose.translation;
  return { turned, camera: [turned[0] + t[0], turned[1] + t[1], turned[2] + t[2]] };
}

/** g . (-[p]x J): the derivative by w of a scalar whose derivative by the turned point p is g. */
export function byRotation(pose: Pose, turned: Vec3, g: Vec3): Vec3 {
  // g . (-[p]x e_k) = g . (e_k x p) = e_k . (p x g)
  const c0 = turned[1] * g[2] - turned[2] * g[1];
  const c1 = turned[2] * g[0] - turned[0] * g[2];
  const c2 = turned[0] * g[1] - turned[1] * g[0];
  const j = pose.jacobian;
  return [
    c0 * j[0] + c1 * j[3] + c2 * j[6],
    c0 * j[1] + c1 * j[4] + c2 * j[7],
    c0 * j[2] + c1 * j[5] + c2 * j[8],
  ];
}

/** g . R: the derivative by the chamber point of a scalar whose derivative by the camera point is g. */
export function byChamberPoint(pose: Pose, g: Vec3): Vec3 {
  const r = pose.rotation;
  return [
    g[0] * r[0] + g[1] * r[3] + g[2] * r[6],
    g[0] * r[1] + g[1] * r[4] + g[2] * r[7],
    g[0] * r[2] + g[1] * r[5] + g[2] * r[8],
  ];
}
