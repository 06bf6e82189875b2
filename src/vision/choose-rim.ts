/**
 * Which of the rims about a chamber is the clamp band's towards the rod.
 *
 * Model    rims of one chamber are circles about one axis: seen alike shortened, their centres on the line of the short axes. The band is
 *          the largest; its two rims are alike large, the one towards the rod comes first from there, the other at a band's width behind.
 *          Inside of the first, its flank ends on the housing, smaller and a little nearer to the rod
 *          widths over half the band's diameter, 80 to 118 mm: bands are 15 to 25 mm wide, flanks 4 to 12 mm high and as deep
 * Assumes  a view from the rod's side
 * Fails    'band/none' where no rim is seen well, 'band/one-rim' where what is found has neither the other rim nor the flank beside it:
 *          it could be any, 'band/two-ways' where two would do
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Arc } from './arc.ts';
import type { Rim } from './rim-edge.ts';

export type ChooseFailure = { readonly code: 'band/none' | 'band/one-rim' | 'band/two-ways' };

/** Of the second's size over the first's, and of how far it lies behind it, over half the diameter. */
type Room = { readonly size: readonly [number, number]; readonly behind: readonly [number, number] };
const OTHER_RIM: Room = { size: [0.94, 1.035], behind: [0.1, 0.34] };
const FLANK: Room = { size: [0.86, 0.965], behind: [-0.13, -0.015] };
/** So much larger, and it is not the other rim that was seen a little too large: what it is compared with is no rim. */
const LARGER = 1.02;

/** The farther behind, the more open a circle is seen, from as far as a brake is taken. */
export const PER_BEHIND = 0.06;

export type Beside = { readonly size: number; readonly behind: number };

/** null where they are no circles about one axis. */
export function beside(rim: Arc, other: Arc): Beside | null {
  const [ratio, otherRatio] = [rim.shortPx / rim.longPx, other.shortPx / other.longPx];
  if (Math.abs(rim.turnRad - other.turnRad) > 0.035) return null;
  const [dx, dy] = [other.centre[0] - rim.centre[0], other.centre[1] - rim.centre[1]];
  const [c, s] = [Math.cos(rim.turnRad), Math.sin(rim.turnRad)];
  if (Math.abs(c * dy - s * dx) > 0.03 * rim.longPx) return null;
  const behind = (c * dx + s * dy) / (rim.longPx * Math.sqrt(1 - ratio * ratio));
  if (Math.abs(otherRatio - ratio - PER_BEHIND * behind) > 0.03) return null;
  return { size: other.longPx / rim.longPx, behind };
}

const isIn = ({ size, behind }: Beside, room: Room) =>
  size > room.size[0] && size < room.size[1] && behind > room.behind[0] && behind < room.behind[1];

export function chooseRim(rims: readonly Rim[]): Result<Rim, ChooseFailure> {
  if (rims.length === 0) return fail({ code: 'band/none' });
  const pairs = (rim: Rim) =>
    rims.flatMap((other) => {
      const how = other === rim ? null : beside(rim.arc, other.arc);
      return how ? [how] : [];
    });
  const can = rims.flatMap((rim) => {
    const all = pairs(rim);
    const held =
      all.filter((how) => isIn(how, OTHER_RIM)).length + all.filter((how) => isIn(how, FLANK)).length;
    const isInner = all.some((how) => how.size > LARGER && !isIn(how, OTHER_RIM));
    const isOther = all.some(
      ({ size, behind }) =>
        size > 1 / OTHER_RIM.size[1] && size < 1 / OTHER_RIM.size[0] && behind < -OTHER_RIM.behind[0],
    );
    return held > 0 && !isInner && !isOther ? [{ rim, held }] : [];
  });
  const [best, next] = can.sort((a, b) => b.held - a.held);
  if (!best) return fail({ code: 'band/one-rim' });
  if (next) return fail({ code: 'band/two-ways' });
  return ok(best.rim);
}
