/**
 * The two equations of a mark: where its point is projected, less where it was marked, over its standard uncertainty.
 *
 * Model    r = (u - xPx, v - yPx) / sigma; by the camera's unknowns as projected; by the pose's, du/dw and du/dt (pose.ts);
 *          by the point's own, du/dXc R dX (R from chamber to camera).
 */
import type { Mark } from '../marks/mark.ts';
import { CAMERA_UNKNOWNS, type Projection, project } from './camera.ts';
import type { PairOfRows, Rows } from './equations.ts';
import { POSE_UNKNOWNS, type Pose } from './pose.ts';
import type { WorldPoint } from './world-point.ts';

/** How a view sees. */
export type Sight = {
  readonly pose: Pose;
  /** The first unknown of the view's camera, and of its pose. */
  readonly cameraAt: number;
  readonly poseAt: number;
};

/** Overwritten by every mark: the point in the camera frame, its projection, the two rows. */
export type MarkRoom = {
  readonly point: [number, number, number];
  readonly projection: Projection;
  readonly pair: PairOfRows;
};

/** Without arrays or objects of its own, taken apart or made: called for every mark in every iteration. */
export function addMark(
  equations: Rows,
  mark: Mark,
  thing: WorldPoint,
  sight: Sight,
  x: Float64Array,
  { point, projection, pair }: MarkRoom,
): void {
  const { rotation: r, translation: t } = sight.pose;
  const { at } = thing;
  const turnedX = r[0] * at[0] + r[1] * at[1] + r[2] * at[2];
  const turnedY = r[3] * at[0] + r[4] * at[1] + r[5] * at[2];
  const turnedZ = r[6] * at[0] + r[7] * at[1] + r[8] * at[2];
  point[0] = turnedX + t[0];
  point[1] = turnedY + t[1];
  point[2] = turnedZ + t[2];
  project(x, sight.cameraAt, point, projection);
  const w = 1 / mark.sigmaPx;
  const { columns, first, second } = pair;
  const { uByCamera, vByCamera, uByPoint, vByPoint } = projection;
  for (let k = 0; k < CAMERA_UNKNOWNS; k++) {
    columns[k] = sight.cameraAt + k;
    first[k] = w * (uByCamera[k] as number);
    second[k] = w * (vByCamera[k] as number);
  }
  const u0 = w * uByPoint[0];
  const u1 = w * uByPoint[1];
  const u2 = w * uByPoint[2];
  const v0 = w * vByPoint[0];
  const v1 = w * vByPoint[1];
  const v2 = w * vByPoint[2];
  const { jacobian: j } = sight.pose;
  for (let k = 0; k < 3; k++) {
    const jx = j[k] as number;
    const jy = j[3 + k] as number;
    const jz = j[6 + k] as number;
    // Column k of -[turned]x J.
    const dx = turnedZ * jy - turnedY * jz;
    const dy = turnedX * jz - turnedZ * jx;
    const dz = turnedY * jx - turnedX * jy;
    columns[CAMERA_UNKNOWNS + k] = sight.poseAt + k;
    first[CAMERA_UNKNOWNS + k] = u0 * dx + u1 * dy + u2 * dz;
    second[CAMERA_UNKNOWNS + k] = v0 * dx + v1 * dy + v2 * dz;
    columns[CAMERA_UNKNOWNS + 3 + k] = sight.poseAt + 3 + k;
    first[CAMERA_UNKNOWNS + 3 + k] = w * (uByPoint[k] as number);
    second[CAMERA_UNKNOWNS + 3 + k] = w * (vByPoint[k] as number);
  }
  const uByX = u0 * r[0] + u1 * r[3] + u2 * r[6];
  const uByY = u0 * r[1] + u1 * r[4] + u2 * r[7];
  const uByZ = u0 * r[2] + u1 * r[5] + u2 * r[8];
  const vByX = v0 * r[0] + v1 * r[3] + v2 * r[6];
  const vByY = v0 * r[1] + v1 * r[4] + v2 * r[7];
  const vByZ = v0 * r[2] + v1 * r[5] + v2 * r[8];
  const { indexes, derivatives: d, unknowns } = thing;
  for (let k = 0; k < unknowns; k++) {
    const dx = d[3 * k] as number;
    const dy = d[3 * k + 1] as number;
    const dz = d[3 * k + 2] as number;
    columns[SIGHT_UNKNOWNS + k] = indexes[k] as number;
    first[SIGHT_UNKNOWNS + k] = uByX * dx + uByY * dy + uByZ * dz;
    second[SIGHT_UNKNOWNS + k] = vByX * dx + vByY * dy + vByZ * dz;
  }
  pair.entries = SIGHT_UNKNOWNS + unknowns;
  equations.addPair(pair, w * (projection.u - mark.xPx), w * (projection.v - mark.yPx), 'marks');
}

const SIGHT_UNKNOWNS = CAMERA_UNKNOWNS + POSE_UNKNOWNS;
