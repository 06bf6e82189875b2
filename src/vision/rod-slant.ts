/**
 * How round the edge is seen at which a round rod leaves a plane square to it.
 *
 * Model    from the camera the circle's near half shows as an arc: over half the rod's width its ends lie as far on along the rod as a step
 *          away from the camera, square to the rod, is seen along it over what it is across. The rod in space: its middle line, at either end as
 *          far away as the tape there (tape-depth.ts) and BEHIND_TAPE_MM more
 * Assumes  the usual focal length
 * Fails    null where the tape does not tell how far away it is
 */
import { dot as inSpace, unit, type Vec3 } from '../basics/rotation.ts';
import { dot, minus, type Point } from './point.ts';
import { BEHIND_TAPE_MM } from './rod-width.ts';
import { scaleBeside, type TapeReading } from './tape-depth.ts';
import type { Lens } from './usual-lens.ts';

/** from: at the face, to: farther out, both on the middle line. Over half the width; more than 0 where the ends lie farther out than the middle. */
export function arcOfRod(
  tape: readonly TapeReading[],
  [fromPx, toPx]: readonly [Point, Point],
  lens: Lens,
): number | null {
  const [from, to] = [fromPx, toPx].map((placePx): Vec3 | null => {
    const scale = scaleBeside(tape, placePx, lens);
    if (!scale) return null;
    const [x, y] = minus(placePx, lens.middle);
    const depthMm = lens.focalPx / scale.pxPerMm + BEHIND_TAPE_MM;
    return [(x / lens.focalPx) * depthMm, (y / lens.focalPx) * depthMm, depthMm];
  });
  if (!from || !to) return null;
  const along = unit([to[0] - from[0], to[1] - from[1], to[2] - from[2]]);
  const by = inSpace(from, along);
  const away = unit([from[0] - by * along[0], from[1] - by * along[1], from[2] - by * along[2]]);
  const seen: Point = [away[0] - (from[0] / from[2]) * away[2], away[1] - (from[1] / from[2]) * away[2]];
  const [dx, dy] = minus(toPx, fromPx);
  const long = Math.hypot(dx, dy);
  return dot(seen, [dx / long, dy / long]);
}
