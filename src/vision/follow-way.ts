/** The way of a thing that moves: from as far back to as far out as it may go, carried into the frame by what stands still. */
import { type PatchMap, shown } from './fit-patch.ts';
import { LOOK_HALF, type Look, mostAlike, roomForLook } from './follow-look.ts';
import type { FollowQuestion } from './follow-sight.ts';
import { offSegment } from './follow-stills.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type Way = { readonly back: Point; readonly out: Point };

export const wayOf = (map: PatchMap, { back, out }: FollowQuestion['reachPx']): Way => ({
  back: shown(map, back),
  out: shown(map, out),
});

/** How far beside its way it may be, over the way's length: rods tilt and cameras sway. */
const BESIDE = 0.15;

export function pathMeets(way: Way, place: Point, slackPx: number): boolean {
  return offSegment(place, way.back, way.out) < besidePx(way) + slackPx;
}

const besidePx = ({ back, out }: Way) => BESIDE * Math.hypot(out[0] - back[0], out[1] - back[1]);

/** Of the longer side: how much its speed may change from frame to frame. */
const REACH_SHARE = 1 / 120;
const LEAST_LIKENESS = 0.6;

export function soughtNear(look: Look, gray: Gray, place: Point, speedPx: number): Point | null {
  const reachPx = REACH_SHARE * Math.max(gray.widthPx, gray.heightPx) + speedPx / 2;
  const reach = Math.ceil(reachPx / look.stepPx);
  const found = mostAlike(look, gray, place, roomForLook(look, reach, reach));
  return found && found.likeness > LEAST_LIKENESS ? found.place : null;
}

/** The best of its whole way must be better than any other by this. */
const CLEARLY = 0.08;

export function soughtAlong(look: Look, gray: Gray, way: Way, slackPx: number): Point | null {
  const widePx = besidePx(way) + slackPx;
  return clearlyFound(look, gray, way, widePx, (place) => pathMeets(way, place, slackPx));
}

function clearlyFound(
  look: Look,
  gray: Gray,
  { back, out }: Way,
  slackPx: number,
  allowed: (place: Point) => boolean,
): Point | null {
  const [fromX, toX] = within(back[0], out[0], slackPx, look.stepPx, gray.widthPx);
  const [fromY, toY] = within(back[1], out[1], slackPx, look.stepPx, gray.heightPx);
  if (!(fromX < toX && fromY < toY)) return null;
  const reach = (from: number, to: number) => Math.ceil((to - from) / 2 / look.stepPx);
  const room = roomForLook(look, reach(fromX, toX), reach(fromY, toY));
  const middle: Point = [(fromX + toX) / 2, (fromY + toY) / 2];
  const found = mostAlike(look, gray, middle, room, allowed);
  const clear = found && found.likeness > LEAST_LIKENESS && found.likeness > found.rival + CLEARLY;
  return clear ? found.place : null;
}

/** Anywhere that is allowed, of a square about a place. */
export function soughtWithin(
  look: Look,
  gray: Gray,
  about: Point,
  reachPx: number,
  allowed: (place: Point) => boolean,
): Point | null {
  return clearlyFound(
    look,
    gray,
    { back: [about[0] - reachPx, about[1] - reachPx], out: [about[0] + reachPx, about[1] + reachPx] },
    0,
    allowed,
  );
}

/** From and to along an axis, with slack, as far as coarse samples about them are in the picture. */
function within(a: number, b: number, slackPx: number, stepPx: number, sizePx: number): [number, number] {
  const rimPx = (LOOK_HALF + 3) * stepPx;
  return [Math.max(rimPx, Math.min(a, b) - slackPx), Math.min(sizePx - rimPx, Math.max(a, b) + slackPx)];
}
