/**
 * The two equations of a mark: where its point is projected, less where it was marked, over its standard uncertainty.
 *
 * Model    r = (u - xPx, v - yPx) / sigma; by the camera's unknowns as projected; by the pose's, du/dw and du/dt (pose.ts);
 *          by the point's own, du/dXc R dX (R from chamber to camera).
 */
import type { Mark } from '../marks/mark.ts';
import { CAMERA_UNKNOWNS, project } from './camera.ts';
import type { Equations } from './equations.ts';
import { byChamberPoint, byRotation, type Pose, transformed } from './pose.ts';
import type { WorldPoint } from './world-point.ts';

/** at: the first unknown of the view's camera, and of its pose. */
export function addMark(
  equations: Equations,
  mark: Mark,
  point: WorldPoint,
  pose: Pose,
  at: { readonly camera: number; readonly pose: number },
  x: Float64Array,
): void {
  const { turned, camera } = transformed(pose, point.at);
  const { u, v, uByPoint, vByPoint, uByCamera, vByCamera } = project(x, at.camera, camera);
  const w = 1 / mark.sigmaPx;
  for (let k = 0; k < CAMERA_UNKNOWNS; k++)
    equations.addBoth(at.camera + k, w * (uByCamera[k] as number), w * (vByCamera[k] as number));
  const [uByW, vByW] = [byRotation(pose, turned, uByPoint), byRotation(pose, turned, vByPoint)];
  for (let k = 0; k < 3; k++)
    equations.addBoth(at.pose + k, w * (uByW[k] as number), w * (vByW[k] as number));
  for (let k = 0; k < 3; k++)
    equations.addBoth(at.pose + 3 + k, w * (uByPoint[k] as number), w * (vByPoint[k] as number));
  const [[ux, uy, uz], [vx, vy, vz]] = [byChamberPoint(pose, uByPoint), byChamberPoint(pose, vByPoint)];
  for (const { index, d } of point.by) {
    const [dx, dy, dz] = d;
    equations.addBoth(index, w * (ux * dx + uy * dy + uz * dz), w * (vx * dx + vy * dy + vz * dz));
  }
  equations.closeBoth(w * (u - mark.xPx), w * (v - mark.yPx), 'marks');
}
