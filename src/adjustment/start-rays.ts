/**
 * Rays of marks, for start values: undistorted, focal length at its prior.
 *
 * Model    ray (a, b, 1) in the camera frame; crossing with the plane z = const of the chamber frame along R^T (ray s - t).
 * Fails    null where the ray runs along the plane or meets it behind the camera.
 */
import {
  cross,
  IDENTITY3,
  type Mat3,
  rotate,
  rotationFromVector,
  transpose,
  type Vec3,
} from '../basics/rotation.ts';
import { cameraPlace } from './pose.ts';
import type { CameraPrior } from './problem.ts';

export type PlaneCrossing = { readonly xMm: number; readonly yMm: number };

export function normalisedRay(
  camera: CameraPrior,
  mark: { readonly xPx: number; readonly yPx: number },
): Vec3 {
  return [(mark.xPx - camera.cxPx) / camera.focalPx, (mark.yPx - camera.cyPx) / camera.focalPx, 1];
}

/** The smallest rotation that takes the optical axis to a ray. */
export function rotationToRay(ray: Vec3): Mat3 {
  const axis = cross([0, 0, 1], ray);
  const sine = Math.hypot(...axis);
  if (sine < 1e-12) return IDENTITY3;
  const angle = Math.atan2(sine, ray[2]);
  return rotationFromVector([(axis[0] / sine) * angle, (axis[1] / sine) * angle, (axis[2] / sine) * angle]);
}

export function planeCrossing(
  pose: { readonly rotation: Mat3; readonly translation: Vec3 },
  ray: Vec3,
  zMm: number,
): PlaneCrossing | null {
  const direction = rotate(transpose(pose.rotation), ray);
  const centre = cameraPlace(pose);
  const along = (zMm - centre[2]) / direction[2];
  if (!(along > 0) || !Number.isFinite(along) || along > 1e5) return null;
  return { xMm: centre[0] + along * direction[0], yMm: centre[1] + along * direction[1] };
}
