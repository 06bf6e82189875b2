/**
 * Where a thing that roams or swings may be, and where to begin to look for it.
 *
 * Model    roams: a disc about its place, carried by what stands still. swings: a ring about the place that it turns about, as far off as
 *          in the seed picture, more or less as the view shortens it.
 *          Sought near where it goes by its speed, by its look in the frame in which it was seen last: what has turned no longer looks as
 *          in the seed picture. Lost, what roams is sought all over its disc; what swings turned on from where it was seen last. The fit
 *          that follows compares with the seed picture.
 */
import type { PatchMap } from './fit-patch.ts';
import type { Look } from './follow-look.ts';
import type { FollowedThing } from './follow-sight.ts';
import { soughtNear, soughtWithin } from './follow-way.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type FreeThing = Extract<FollowedThing, { readonly how: 'roams' | 'swings' }>;

export const isFree = (thing: FollowedThing): thing is FreeThing =>
  thing.how === 'roams' || thing.how === 'swings';

/** Of the ring, over the distance in the seed picture: seen up to 42 degrees off square, and near from one side. */
const RING = { least: 0.6, most: 1.6 };

/** about: the middle of disc or ring in this frame. */
export function mayBeAt(thing: FreeThing, about: Point, place: Point): boolean {
  const farPx = Math.hypot(place[0] - about[0], place[1] - about[1]);
  if (thing.how === 'roams') return farPx < thing.reachPx;
  const seedPx = Math.hypot(thing.placePx[0] - thing.aboutPx[0], thing.placePx[1] - thing.aboutPx[1]);
  return farPx > RING.least * seedPx && farPx < RING.most * seedPx;
}

/** From one released rest to the next hardly more; tried in steps that a fit gets over. */
const MOST_SWING_RAD = Math.PI / 6;
const FIT_REACH = 0.2;
/** A circle seen at an angle is no circle: as much longer or shorter. */
const LONGER = [1, 1.02, 0.98] as const;

/** next: by its speed; null where it was not seen in the frame before. last: where it would be had it not moved since. */
export function* freeStarts(
  thing: FreeThing,
  look: Look,
  gray: Gray,
  about: Point,
  {
    next,
    last,
    speedPx,
  }: { readonly next: PatchMap | null; readonly last: PatchMap; readonly speedPx: number },
): Iterable<PatchMap> {
  if (next) {
    const near = soughtNear(look, gray, next.place, speedPx);
    if (near) yield { ...next, place: near };
    yield next;
  }
  if (thing.how === 'swings') yield* swung(thing, about, last);
  else {
    const found = soughtWithin(look, gray, about, thing.reachPx, (place) => mayBeAt(thing, about, place));
    if (found) yield { place: found, steps: last.steps };
  }
}

/** Turned on from where it was seen last, by little first. */
function* swung({ radiusPx }: FreeThing, about: Point, { place, steps }: PatchMap): Iterable<PatchMap> {
  const [dx, dy] = [place[0] - about[0], place[1] - about[1]];
  const stepRad = (FIT_REACH * radiusPx) / Math.max(Math.hypot(dx, dy), radiusPx);
  for (let rad = 0; rad < MOST_SWING_RAD; rad += stepRad)
    for (const turn of rad === 0 ? [0] : [rad, -rad])
      for (const longer of LONGER) {
        const [c, s] = [longer * Math.cos(turn), longer * Math.sin(turn)];
        yield {
          place: [about[0] + c * dx - s * dy, about[1] + s * dx + c * dy],
          steps: turned(steps, turn),
        };
      }
}

export function turned([xx, xy, yx, yy]: PatchMap['steps'], rad: number): PatchMap['steps'] {
  const [c, s] = [Math.cos(rad), Math.sin(rad)];
  return [c * xx - s * yx, c * xy - s * yy, s * xx + c * yx, s * xy + c * yy];
}
