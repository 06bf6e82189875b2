/**
 * A thing that moves or turns, in one frame: expected by its own motion on top of the picture's, sought, fitted, and fitted back.
 *
 * Model    sigma^2 = fit's + (half of there-and-back)^2 + floor^2 + relief^2
 * Fails    a gap, where the fit is not like the seed, is off its way, or does not lead back to where it came from
 */
import { inverseSteps, type PatchMap, sizeOf } from './fit-patch.ts';
import { type FollowFit, fitFollowed } from './follow-fit.ts';
import { freeStarts, isFree, mayBeAt, turned } from './follow-free.ts';
import { type Look, lookOf } from './follow-look.ts';
import { type Patch, patchOf } from './follow-patch.ts';
import { type FitRoom, roomFor } from './follow-residuals.ts';
import type { FollowedSight, FollowedThing, Gap } from './follow-sight.ts';
import type { ThingState } from './follow-state.ts';
import { changeOf, FLOOR_PX } from './follow-still.ts';
import { pathMeets, soughtAlong, soughtNear, type Way } from './follow-way.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type Followable = {
  readonly thing: FollowedThing;
  readonly patch: Patch;
  /** With what lies about it. */
  readonly look: Look;
  /** The same of itself alone: a tape about it does not go with it. null: too plain. */
  readonly ownLook: Look | null;
  readonly room: FitRoom;
  readonly seed: Gray;
};

/** expected: by the picture's motion alone. carried: the seed place, carried by what stands still. about: of what roams or swings. */
export type Expected = {
  readonly expected: PatchMap;
  readonly carried: PatchMap;
  readonly way: Way;
  readonly about: Point;
};

export type ThingSight = { readonly state: ThingState; readonly sight: FollowedSight | Gap };

const LEAST_LIKENESS = 0.8;
/** What roams or swings goes towards the camera and turns in the light as well: it changes its look more. */
const LEAST_LIKENESS_FREE = 0.7;
const LEAST_SHARE = 0.5;
const MOST_SIGMA_PX = 0.7;
/** There and back, in sample steps. */
const MOST_BACK = 0.5;
const MOST_BACK_FREE = 1;
/** The way back needs no finer samples to contradict. */
const BACK_STEPS = 2;
/** From frame to frame no part changes its shape by more. */
const MOST_CHANGE = 0.3;
/** Turned on from the last frame's speed, tried where that fails. */
const TURNS_TRIED_RAD = Array.from({ length: 11 }, (_, i) => ((i - 5) * Math.PI) / 15);

export function followThing(one: Followable, gray: Gray, last: ThingState, at: Expected): ThingSight {
  const free = isFree(one.thing);
  for (const start of startsOf(one, gray, last, at)) {
    const fit = fitFollowed(one.patch, gray, start, one.room);
    if (
      !fit ||
      !isLike(fit, free) ||
      changeOf(fit, start) > MOST_CHANGE ||
      !onItsWay(one, fit, start, { ...at, isSeen: last.seen })
    )
      continue;
    const backPx = backOff(one, gray, fit);
    const mostBack = free ? MOST_BACK_FREE : MOST_BACK;
    if (backPx === null || backPx > mostBack * one.patch.stepPx) continue;
    const sigmaPx = Math.hypot(fit.sigmaPx, backPx / 2, FLOOR_PX * one.patch.stepPx, reliefPx(one, fit, at));
    const look = free ? lookOf(gray, fit.place, one.look.stepPx) : null;
    return {
      state: { ...stateOf(last, at, fit), ...(look ? { look } : {}) },
      sight: { placePx: fit.place, sigmaPx },
    };
  }
  const { place, steps } = last.seen
    ? nextOf(last, at)
    : { place: at.expected.place, steps: at.expected.steps };
  return {
    state: { ...last, place, steps, seen: false, stepPx: [0, 0], turnRad: 0 },
    sight: gapAt(one, gray, place),
  };
}

/** How far a thing has gone, over the picture's longer side, is about the angle by which it is seen from another side, in radians:
 * what stands out of it, by a share of its radius, then shifts against the rest. The share as found in rendered clips. */
const RELIEF = 0.12;

function reliefPx({ patch, seed }: Followable, { place }: PatchMap, { carried }: Expected): number {
  const travelPx = Math.hypot(place[0] - carried.place[0], place[1] - carried.place[1]);
  return (RELIEF * patch.radiusPx * travelPx) / Math.max(seed.widthPx, seed.heightPx);
}

function stateOf(last: ThingState, { expected }: Expected, fit: FollowFit): ThingState {
  const { place, steps } = fit;
  const known = last.seen;
  return {
    place,
    steps,
    seen: true,
    stepPx: known ? [place[0] - expected.place[0], place[1] - expected.place[1]] : [0, 0],
    turnRad: known ? angleOf(steps) - angleOf(expected.steps) : 0,
  };
}

const isLike = ({ likeness, share, sigmaPx }: FollowFit, free: boolean) =>
  likeness > (free ? LEAST_LIKENESS_FREE : LEAST_LIKENESS) && share > LEAST_SHARE && sigmaPx < MOST_SIGMA_PX;

const angleOf = ([xx, xy, yx, yy]: PatchMap['steps']) => Math.atan2(yx - xy, xx + yy);

function nextOf(last: ThingState, { expected }: Expected): PatchMap {
  const [x, y] = expected.place;
  return { place: [x + last.stepPx[0], y + last.stepPx[1]], steps: turned(expected.steps, last.turnRad) };
}

function* startsOf(one: Followable, gray: Gray, last: ThingState, at: Expected): Iterable<PatchMap> {
  if (isFree(one.thing)) {
    const going = {
      next: last.seen ? nextOf(last, at) : null,
      last: at.expected,
      speedPx: Math.hypot(...last.stepPx),
    };
    yield* freeStarts(one.thing, last.look ?? one.look, gray, at.about, going);
    return;
  }
  if (one.thing.how === 'turns') {
    if (last.seen) yield nextOf(last, at);
    else yield* turnsAlike(one, gray, at.carried);
    return;
  }
  const looks = one.ownLook ? [one.ownLook, one.look] : [one.look];
  if (last.seen) {
    const next = nextOf(last, at);
    for (const look of looks) {
      const near = soughtNear(look, gray, next.place, Math.hypot(...last.stepPx));
      if (near) yield { ...next, place: near };
    }
    yield next;
  }
  for (const look of looks) {
    const found = soughtAlong(look, gray, at.way, one.patch.radiusPx);
    if (found) yield { place: found, steps: at.carried.steps };
  }
}

/** What goes on from where it was is where it looks alike; what is sought anew must be where it may be. */
function onItsWay(
  { thing, patch }: Followable,
  { place }: PatchMap,
  start: PatchMap,
  { way, about, isSeen }: Expected & { readonly isSeen: boolean },
): boolean {
  if (isFree(thing)) return mayBeAt(thing, about, place);
  const goesOn = Math.hypot(place[0] - start.place[0], place[1] - start.place[1]) < patch.radiusPx / 2;
  return thing.how === 'moves' && !(isSeen && goesOn) ? pathMeets(way, place, patch.radiusPx) : goesOn;
}

/** The turn that looks most alike first, tried with the shape as carried. */
function turnsAlike(one: Followable, gray: Gray, carried: PatchMap): readonly PatchMap[] {
  const tried = TURNS_TRIED_RAD.flatMap((turnRad) => {
    const start = { place: carried.place, steps: turned(carried.steps, turnRad) };
    const fit = fitFollowed(one.patch, gray, start, one.room);
    return fit && changeOf(fit, start) < MOST_CHANGE ? { start, likeness: fit.likeness } : [];
  });
  return tried
    .sort((a, b) => b.likeness - a.likeness)
    .slice(0, 1)
    .map(({ start }) => start);
}

/** From the frame back to the seed picture: how far from where it started. */
function backOff({ patch, seed }: Followable, gray: Gray, fit: FollowFit): number | null {
  const there = patchOf(gray, fit.place, patch.radiusPx, BACK_STEPS * patch.stepPx);
  if (!there) return null;
  const back = fitFollowed(
    there,
    seed,
    { place: patch.place, steps: inverseSteps(fit.steps) },
    roomFor(there),
  );
  if (!back) return null;
  const off = Math.hypot(back.place[0] - patch.place[0], back.place[1] - patch.place[1]);
  return off * Math.sqrt(Math.abs(sizeOf(fit.steps)));
}

/** A blurred picture keeps its differences of light and loses its slopes. */
const BLURRED = 0.35;

function gapAt({ patch }: Followable, gray: Gray, place: PatchMap['place']): Gap {
  const [x, y] = place;
  const r = patch.radiusPx;
  if (x < r || y < r || x > gray.widthPx - r || y > gray.heightPx - r) return 'outside';
  const there = patchOf(gray, place, r, patch.stepPx);
  return there && there.sharpness < BLURRED * patch.sharpness ? 'blurred' : 'hidden';
}
