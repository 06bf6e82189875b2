/**
 * Moves in place every band mark to the one point of the rim that explains it best, wherever on the rim that is.
 *
 * Model    least |p(w) - m|^2 / sigma^2 + (angle beyond the facing part / its width)^2 over an even grid of angles and the present
 *          angle. Near the ends of the rim's ellipse its near and its far half lie close together: a mark that a fit has
 *          carried over to the wrong one does not come back by small steps (settle-band).
 * Fails    never: the present angle is kept where nothing is better.
 */
import type { Mat3 } from '../basics/rotation.ts';
import type { Mark } from '../marks/mark.ts';
import { project } from './camera.ts';
import type { Layout } from './layout.ts';
import { type Pose, poseAt, transformed } from './pose.ts';
import { BAND_BEYOND_RAD, BAND_FREE_RAD } from './priors.ts';
import type { Problem } from './problem.ts';
import type { Start } from './start.ts';
import { facingAngle, turnedBy } from './start-band.ts';

const GRID = 64;

/**
 * halfArcRad: how far to each side of the facing angle a mark may be. Returns how much the marks' parts of chi-square have
 * changed in all.
 */
export function unfoldBand(
  x: Float64Array,
  problem: Problem,
  layout: Layout,
  start: Pick<Start, 'rotations'>,
  halfArcRad: number,
): number {
  const band = layout.band;
  if (band === null) return 0;
  const [place, radius] = [x[band] as number, (x[band + 1] as number) / 2];
  let change = 0;
  for (const view of problem.views) {
    const marks = view.marks.filter((mark) => mark.kind === 'clamp-band' && layout.nuisance.has(mark.id));
    if (marks.length === 0) continue;
    const at = layout.poses[view.pose] as number;
    const pose = poseAt(x, at, start.rotations[view.pose] as Mat3);
    const facing = facingAngle(pose.rotation, pose.translation);
    const see = (angle: number): Seen => {
      const point = [place, radius * Math.cos(angle), radius * Math.sin(angle)] as const;
      const { u, v } = project(
        x,
        layout.cameras[view.camera] as number,
        transformed(pose as Pose, point).camera,
      );
      const beyond = Math.max(0, Math.abs(turnedBy(angle, facing)) - BAND_FREE_RAD) / BAND_BEYOND_RAD;
      return { angle, u, v, held: beyond * beyond };
    };
    const grid = Array.from({ length: GRID + 1 }, (_, i) => see(facing + halfArcRad * ((2 * i) / GRID - 1)));
    for (const mark of marks) {
      const angleAt = layout.nuisance.get(mark.id) as number;
      const present = misfit(see(x[angleAt] as number), mark);
      const isOnArc = Math.abs(turnedBy(x[angleAt] as number, facing)) <= halfArcRad;
      let [best, angle] = [isOnArc ? present : Number.POSITIVE_INFINITY, x[angleAt] as number];
      for (const seen of grid) {
        const sum = misfit(seen, mark);
        if (sum < best) [best, angle] = [sum, seen.angle];
      }
      x[angleAt] = angle;
      change += Math.abs(present - best);
    }
  }
  return change;
}

type Seen = { readonly angle: number; readonly u: number; readonly v: number; readonly held: number };

function misfit({ u, v, held }: Seen, { xPx, yPx, sigmaPx }: Mark): number {
  return ((u - xPx) ** 2 + (v - yPx) ** 2) / sigmaPx ** 2 + held;
}
