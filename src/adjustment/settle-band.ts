/**
 * Moves in place the angle of every band mark to where the projected rim is nearest to the mark, the rest held.
 *
 * Model    minimise |p(w) - m|^2 over w by Gauss-Newton: dw = -(p' . e) / |p'|^2, steps held to a quarter radian.
 *          Without it the fit creeps: the angles must follow each turn of the rim along a curved valley.
 *          An angle stays on the part of the rim that faces the camera: else a rim tilted the wrong way takes the marks of the
 *          near half for its far half, and the fit ends there.
 */
import type { Mat3 } from '../basics/rotation.ts';
import { project, roomForProjection } from './camera.ts';
import type { Layout } from './layout.ts';
import { byChamberPoint, type Pose, poseAt, transformed } from './pose.ts';
import type { Problem } from './problem.ts';
import type { Start } from './start.ts';
import { facingAngle, turnedBy } from './start-band.ts';

const STEPS = 2;
const LONGEST_RAD = 0.25;
/** Half the arc on which a mark can be: the half that faces the camera, and what comes into sight beyond it round the housing
 * (120 degrees from the facing side were seen on a rendered wheel end 19 degrees off square). */
export const MOST_RAD = 2.2;

export function settleBand(
  x: Float64Array,
  problem: Problem,
  layout: Layout,
  start: Pick<Start, 'rotations'>,
): void {
  const band = layout.band;
  if (band === null) return;
  const poses = layout.poses.map((at, i) => poseAt(x, at, start.rotations[i] as Mat3));
  const place = x[band] as number;
  const radius = (x[band + 1] as number) / 2;
  const room = roomForProjection();
  for (const view of problem.views) {
    const pose = poses[view.pose] as Pose;
    const camera = layout.cameras[view.camera] as number;
    const facing = facingAngle(pose.rotation, pose.translation);
    for (const mark of view.marks) {
      const at = mark.kind === 'clamp-band' ? layout.nuisance.get(mark.id) : undefined;
      if (at === undefined) continue;
      for (let i = 0; i < STEPS; i++) {
        const c = Math.cos(x[at] as number);
        const s = Math.sin(x[at] as number);
        const seen = transformed(pose, [place, radius * c, radius * s]);
        const p = project(x, camera, seen.camera, room);
        const byU = byChamberPoint(pose, p.uByPoint);
        const byV = byChamberPoint(pose, p.vByPoint);
        const du = radius * (byU[2] * c - byU[1] * s);
        const dv = radius * (byV[2] * c - byV[1] * s);
        const length = du * du + dv * dv;
        if (!(length > 1e-6)) break;
        const step = -(du * (p.u - mark.xPx) + dv * (p.v - mark.yPx)) / length;
        x[at] = (x[at] as number) + Math.max(-LONGEST_RAD, Math.min(LONGEST_RAD, step));
        if (Math.abs(step) < 1e-3) break;
      }
      x[at] = heldNear(x[at] as number, facing);
    }
  }
}

function heldNear(angle: number, facing: number): number {
  const off = turnedBy(angle, facing);
  return facing + Math.max(-MOST_RAD, Math.min(MOST_RAD, off));
}
