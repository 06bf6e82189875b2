/**
 * The two rims of a band as circles about one axis that are seen where a place of the grid (find-bands.ts) says.
 *
 * Model    the near half of the rim's outline is that of an ellipse with half axes `long` and `short`, its vertex V (from the picture's
 *          middle). For a circle of radius r whose foot lies in the depth f the vertex is nearer by r cos e: it is seen larger by 1 / (1 - n),
 *          n = r cos e / f. To first order in n: the foot lies short (1 + n) before the vertex, since the near half of the circle is seen
 *          longer than the far one; r = long sqrt(1 - n^2); the axis is turned against the ellipse's by n short / long of what V is
 *          aside, over r, since the near half is seen askew; sin e + out cos e = short (1 + n) / r, out = V along the axis over f
 *          the other rim's vertex lies behind the rim's by cos e - out sin e, over 1 - n, for each unit along the axis
 * Assumes  what coaxial.ts assumes. Good to 2 % of the size for 95 % of places (tests); the climb makes up for it
 */
import type { BandPlace, Chamber } from './find-bands.ts';
import type { Coaxial } from './fit-coaxial.ts';
import type { Point } from './point.ts';

/** What is known of the camera. */
export type Lens = { readonly middle: Point; readonly focalPx: number };

export function ringsSeenAt(
  { facePx, backRad, lengthPx }: Chamber,
  { middle, focalPx }: Lens,
  place: BandPlace,
): Coaxial {
  const { vertex, aside, ratio, other } = place;
  const [c, s] = [Math.cos(backRad), Math.sin(backRad)];
  const [x, y]: Point = [
    facePx[0] + lengthPx * (c * vertex - s * aside) - middle[0],
    facePx[1] + lengthPx * (s * vertex + c * aside) - middle[1],
  ];
  const seenRad = backRad + place.turnRad;
  const [cs, ss] = [Math.cos(seenRad), Math.sin(seenRad)];
  const long = place.long * lengthPx;
  const near = (long * Math.sqrt(1 - ratio * ratio)) / focalPx;
  const radius = long * Math.sqrt(1 - near * near);
  const short = ratio * long * (1 + near);
  const turnRad = seenRad + (ratio * near * (cs * y - ss * x)) / long;
  const out = (Math.cos(turnRad) * x + Math.sin(turnRad) * y) / focalPx;
  const tiltRad = Math.asin(short / radius / Math.hypot(1, out)) - Math.atan(out);
  const seenPerBehind = (Math.cos(tiltRad) - out * Math.sin(tiltRad)) / (1 - near);
  return {
    axis: { middle, focalPx, foot: [x - short * cs, y - short * ss], turnRad, tiltRad },
    rings: [
      { behind: 0, radius },
      { behind: (other * lengthPx) / seenPerBehind, radius },
    ],
  };
}
