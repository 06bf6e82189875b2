/**
 * Pictures taken from directions so far apart that usual depths decide the stroke, and nothing that ties the pictures together.
 *
 * Model    angle between the depth axes of two poses, acos(R1 e3 . R2 e3); a rim, four tie points, or a tape or target that stayed
 *          where it was tie them.
 * Source   photographs of a flat board (docs/outside.md): of pairs with a tape only and more than 30 degrees between them U95 held
 *          the truth in 77 %, of the others and of those with tie points in 95 % and more.
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { poseAt } from '../adjustment/pose.ts';
import type { Mat3 } from '../basics/rotation.ts';
import { radFromDeg } from '../basics/units.ts';

const APART_RAD = radFromDeg(30);
const LEAST_TIES = 4;

/** The largest angle between two poses, where it is too large; null where it is not. */
export function viewsApartRad({ layout, best, problem }: Adjustment): number | null {
  const { tape, target } = problem.references;
  if (layout.band !== null || layout.ties.size >= LEAST_TIES || tape?.unmoved || target?.unmoved) return null;
  const rotations = layout.poses.map((at, i) => poseAt(best.x, at, best.start.rotations[i] as Mat3).rotation);
  let largest = 0;
  for (const [i, a] of rotations.entries())
    for (const b of rotations.slice(i + 1)) {
      const cosine = a[2] * b[2] + a[5] * b[5] + a[8] * b[8];
      largest = Math.max(largest, Math.acos(Math.min(1, Math.max(-1, cosine))));
    }
  return largest > APART_RAD ? largest : null;
}
