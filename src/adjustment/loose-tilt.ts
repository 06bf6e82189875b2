/**
 * Is some picture's direction of view so poorly known that lengths no longer follow it in a straight line?
 *
 * Model    standard uncertainty of each component of each pose's rotation, from the covariance.
 *          A length seen at the tilt t goes with cos t: at 0.15 rad of doubt its curvature is a tenth of its slope and more.
 *          With a tape, a clamp band or a target the doubt is 0.02 to 0.14 rad in simulated scenes, with an arm length or one
 *          distance alone 0.15 to 0.45.
 */
import { inverseForm } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';

const LOOSE_RAD = 0.15;

export function hasLooseTilt({ layout, factor }: Adjustment): boolean {
  const rotations = layout.poses.flatMap((at) => [at, at + 1, at + 2]);
  return rotations.some((index) => {
    const unit = new Float64Array(layout.size);
    unit[index] = 1;
    return inverseForm(factor, unit) > LOOSE_RAD ** 2;
  });
}
