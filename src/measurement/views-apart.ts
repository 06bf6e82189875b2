/**
 * Pictures taken from directions so far apart that usual depths decide the stroke, and nothing that ties the pictures together.
 *
 * Model    angle between the cameras' axes (apart.ts); a rim, four tie points, or a tape or target that stayed where it was tie them.
 * Source   photographs of a flat board (docs/outside.md): of pairs with a tape only and more than 30 degrees between them U95 held
 *          the truth in 77 %, of the others and of those with tie points in 95 % and more.
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { apartRad } from '../adjustment/apart.ts';
import { radFromDeg } from '../basics/units.ts';

const APART_RAD = radFromDeg(30);
const LEAST_TIES = 4;

/** The largest angle between two poses, where it is too large; null where it is not. */
export function viewsApartRad(adjustment: Adjustment): number | null {
  const { layout, problem } = adjustment;
  const { tape, target } = problem.references;
  if (layout.band !== null || layout.ties.size >= LEAST_TIES || tape?.unmoved || target?.unmoved) return null;
  const largest = apartRad(adjustment);
  return largest > APART_RAD ? largest : null;
}
