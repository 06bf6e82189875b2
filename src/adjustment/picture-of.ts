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
  const poseFrom = layout.poses[poseIndex] as number;
  const rotation = best.start.rotations[poseIndex] as Mat3;
  return seenBy(adjustment, view.camera, poseAt(best.x, poseFrom, rotation));
}

/** From a place of the camera that is none of the adjustment's own. camera: its index there. */
export function pictureFrom(
  adjustment: Adjustment,
  camera: number,
  { rotation, translation }: { readonly rotation: Mat3; readonly translation: Vec3 },
): ChamberToPicture {
  return seenBy(adjustment, camera, poseAt([0, 0, 0, ...translation], 0, rotation));
}

function seenBy(
  { layout, best }: Adjustment,
  cameraIndex: number,
  pose: ReturnType<typeof poseAt>,
): ChamberToPicture {
  const camera = layout.cameras[cameraIndex] as number;
  return (point) => {
    const { u, v } = project(best.x, camera, transformed(pose, point).camera);
    return [u, v];
  };
}
