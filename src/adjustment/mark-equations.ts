/**
 * The two equations of a mark: where its point is projected, less where it was marked, over its standard uncertainty.
 *
 * Model    r = (u - xPx, v - yPx) / sigma; by the camera's unknowns as projected; by the pose's, du/dw and du/dt (pose.ts);
 *          by the point's own, du/dXc R dX (R from chamber to camera).
 */
import type { Mark } from '../marks/mark.ts';
import { CAMERA_UNKNOWNS, type Projection, project } from './camera.ts';
import type { Equations } from './equations.ts';
import { byChamberPoint, byRotation, type Pose, transformed } from './pose.ts';
import type { WorldPoint } from './world-point.ts';

/** How a view sees. */
export type Sight = {
  readonly pose: Pose;
  /** The first unknown of the view's camera, and of its pose. */
  readonly cameraAt: number;
  readonly poseAt: number;
  /** Overwritten by every mark. */
  readonly room: Projection;
};

export function addMark(
  equations: Equations,
  mark: Mark,
  point: WorldPoint,
  { pose, cameraAt, poseAt, room }: Sight,
  x: Float64Array,
): void {
  const { turned, camera } = transformed(pose, point.at);
  const p = project(x, cameraAt, camera, room);
  const w = 1 / mark.sigmaPx;
  for (let k = 0; k < CAMERA_UNKNOWNS; k++)
    equations.addBoth(cameraAt + k, w * (p.uByCamera[k] as number), w * (p.vByCamera[k] as number));
  const uByW = byRotation(pose, turned, p.uByPoint);
  const vByW = byRotation(pose, turned, p.vByPoint);
  for (let k = 0; k < 3; k++) equations.addBoth(poseAt + k, w * (uByW[k] as number), w * (vByW[k] as number));
  for (let k = 0; k < 3; k++)
    equations.addBoth(poseAt + 3 + k, w * (p.uByPoint[k] as number), w * (p.vByPoint[k] as number));
  const uBy = byChamberPoint(pose, p.uByPoint);
  const vBy = byChamberPoint(pose, p.vByPoint);
  const { indexes, derivatives: d } = point;
  for (let k = 0; k < point.unknowns; k++) {
    const [dx, dy, dz] = [d[3 * k] as number, d[3 * k + 1] as number, d[3 * k + 2] as number];
    equations.addBoth(
      indexes[k] as number,
      w * (uBy[0] * dx + uBy[1] * dy + uBy[2] * dz),
      w * (vBy[0] * dx + vBy[1] * dy + vBy[2] * dz),
    );
  }
  equations.closeBoth(w * (p.u - mark.xPx), w * (p.v - mark.yPx), 'marks');
}
