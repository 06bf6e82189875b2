/**
 * Is the tilt that lengths are seen at so poorly known that they no longer follow it in a straight line?
 *
 * Model    a length seen at the tilt t goes with cos t: at 0.15 rad of doubt its curvature is a tenth of its slope and more. With a tape, a clamp
 *          band or a target the scale lies along the chamber axis, as the stroke does: the tilt is that of the axis towards the
 *          camera, c = (R e1) . e3, dc = (R e1 x e3) . J dw. How the brake is turned about its axis, which without the
 *          camshaft's end little tells, changes no length along it. With an arm or one distance every direction counts: each
 *          component of each pose's rotation.
 *          Standard uncertainties are the covariance's: 0.01 to 0.1 rad for the axis, 0.15 to 0.45 with an arm length or one distance
 *          alone, in simulated scenes.
 */
import type { Mat3, Vec3 } from '../basics/rotation.ts';
import { inverseForm } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { byRotation, poseAt } from './pose.ts';

const LOOSE_RAD = 0.15;
const OPTICAL_AXIS: Vec3 = [0, 0, 1];

export function hasLooseTilt({ problem, layout, factor, best }: Adjustment): boolean {
  const { tape, clampBand, target } = problem.references;
  const isAlongAxis = tape !== null || clampBand !== null || target !== null;
  return layout.poses.some((at, i) => {
    const pose = poseAt(best.x, at, best.start.rotations[i] as Mat3);
    const { rotation: r } = pose;
    const ways = isAlongAxis ? [byRotation(pose, [r[0], r[3], r[6]], OPTICAL_AXIS)] : ALL;
    return ways.some((way) => {
      const unit = new Float64Array(layout.size);
      unit.set(way, at);
      return inverseForm(factor, unit) > LOOSE_RAD ** 2;
    });
  });
}

const ALL: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
