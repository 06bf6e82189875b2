/**
 * Places of the seed picture that are likely to stand still and are found again well, the near ones first, spread.
 *
 * Model    corners outside of what moves by more than the patch's radius
 */
import { binned } from './binned.ts';
import { corners } from './corners.ts';
import { type Patch, patchOf, sigmaPerLevelPx } from './follow-patch.ts';
import type { FollowQuestion } from './follow-sight.ts';
import type { Gray } from './gray.ts';
import { inside } from './inside.ts';
import type { Point } from './point.ts';
import { spread } from './spread.ts';

const MOST_STILLS = 36;
/** Of them, those about the place that matters most, as close together as they must be. */
const MOST_NEAR = 14;
/** Of the longer side. */
const NEAR_SHARE = 0.12;
const MOST_TRIED = 140;
/** Dark steel in shade has no stronger ones. */
const WANTED = { most: 4000, leastShare: 0.0005, apartPx: 6 };
/** For noise of one level; that of a coded clip is about two. */
const MOST_SIGMA_PX = 0.06;

/** A place as it is compared. Those about the chamber carry the face: with all of their samples. */
export function stillOf(
  seed: Gray,
  place: Point,
  aboutPx: Point,
  { radiusPx, stepPx }: { readonly radiusPx: number; readonly stepPx: number },
): Patch | null {
  return patchOf(seed, place, radiusPx, stepPx, isNear(seed, place, aboutPx) ? 'all' : 'few');
}

const isNear = ({ widthPx, heightPx }: Gray, [x, y]: Point, [ax, ay]: Point) =>
  Math.hypot(x - ax, y - ay) < NEAR_SHARE * Math.max(widthPx, heightPx);

export function findStills(
  seed: Gray,
  question: FollowQuestion,
  radiusPx: number,
  stepPx: number,
): readonly Patch[] {
  const longPx = Math.max(seed.widthPx, seed.heightPx);
  const [ax, ay] = question.aboutPx;
  const farness = ([x, y]: Point) => 1 + (8 * Math.hypot(x - ax, y - ay)) / longPx;
  const stands = cornersOf(seed, stepPx).filter((place) => standsStill(place, question, radiusPx));
  const sharp = (places: readonly Point[]) =>
    places
      .flatMap((place) => stillOf(seed, place, question.aboutPx, { radiusPx, stepPx }) ?? [])
      .filter((patch) => sigmaPerLevelPx(patch) < MOST_SIGMA_PX);
  const chosen = (patches: readonly Patch[], most: number, apartPx: number) =>
    spread(
      patches,
      ({ place }) => place,
      (patch) => farness(patch.place) * Math.sqrt(sigmaPerLevelPx(patch)),
      { most, reachPx: apartPx },
    );
  const near = (place: Point) => isNear(seed, place, question.aboutPx);
  const some = (places: readonly Point[], apartPx: number) =>
    spread(places, (place) => place, farness, { most: MOST_TRIED, reachPx: apartPx });
  const closest = chosen(sharp(some(stands.filter(near), radiusPx)), MOST_NEAR, 4 * radiusPx);
  const far = some(
    stands.filter((place) => !near(place)),
    longPx / 20,
  );
  return [...closest, ...chosen(sharp(far), MOST_STILLS - closest.length, longPx / 14)];
}

/** In samples as coarse as a place is compared by. */
function cornersOf(seed: Gray, stepPx: number): readonly Point[] {
  return corners(stepPx === 1 ? seed : binned(seed, stepPx), WANTED).map(([x, y]) => [
    stepPx * x,
    stepPx * y,
  ]);
}

const NO_REACH: FollowQuestion['reachPx'] = { out: [0, 0], back: [0, 0] };

function standsStill(
  [x, y]: Point,
  { things, leaveOut, reachPx }: FollowQuestion,
  radiusPx: number,
): boolean {
  const near = leaveOut.some(
    (outline) =>
      inside([x, y], outline) ||
      outline.some(
        (from, i) => offSegment([x, y], from, outline[(i + 1) % outline.length] as Point) < radiusPx,
      ),
  );
  if (near) return false;
  return things.every(({ placePx: [px, py], how, radiusPx: own }) => {
    if (how === 'carried') return true;
    const { out, back } = how === 'moves' ? reachPx : NO_REACH;
    const off = offSegment([x, y], [px + back[0], py + back[1]], [px + out[0], py + out[1]]);
    return off > own + radiusPx;
  });
}

export function offSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
