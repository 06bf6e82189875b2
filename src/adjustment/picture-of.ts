/** Where a point of the chamber frame (mm) lies in a picture (px of the upright picture), by the adjusted cameras. */
import type { Mat3, Vec3 } from '../basics/rotation.ts';
import type { Adjustment } from './adjustment.ts';
import { project } from './camera.ts';
import { poseAt, transformed } from './pose.ts';

export type ChamberToPicture = (point: Vec3) => readonly [xPx: number, yPx: number];

/** pose: the pose to look from, the view's own unless another is asked for. */
export function pictureOf(adjustment: Adjustment, viewIndex: number, pose?: number): ChamberToPicture {
  const { layout, problem, best } = adjustment;
  const view = problem.views[viewIndex] as (typeof problem.views)[number];
  const poseIndex = pose ?? view.pose;
  const at = poseAt(best.x, layout.poses[poseIndex] as number, best.start.rotations[poseIndex] as Mat3);
  const camera = layout.cameras[view.camera] as number;
  return (point) => {
    const { u, v } = project(best.x, camera, transformed(at, point).camera);
    return [u, v];
  };
}
