/**
 * Follows marked things, and what stands still about them, from one frame of a clip through the frames after or before it.
 *
 * Model    for each frame: how the whole picture moved (follow-motion.ts); each still place fitted to its look in the seed picture,
 *          so that nothing drifts (follow-fit.ts); where that carries the rest (follow-carry.ts); the things (follow-thing.ts)
 * Assumes  frames in order of time, forwards or backwards, beginning at or beside the seed
 * Fails    'follow/too-few-still', 'follow/no-feature'. What is not seen in a frame is a gap, not a guess.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { PatchMap } from './fit-patch.ts';
import { carried } from './follow-carry.ts';
import { type Motion, type Moved, movedBy } from './follow-common.ts';
import { type FitRoom, roomFor } from './follow-fit.ts';
import { type Look, lookOf } from './follow-look.ts';
import { motionSince } from './follow-motion.ts';
import { type Patch, patchOf } from './follow-patch.ts';
import type {
  FollowedSight,
  FollowedThing,
  FollowFailure,
  FollowQuestion,
  FrameSight,
  Gap,
} from './follow-sight.ts';
import type { FollowState, SpotState, ThingState } from './follow-state.ts';
import { followStill } from './follow-still.ts';
import { findStills } from './follow-stills.ts';
import { type Followable, followThing } from './follow-thing.ts';
import { wayOf } from './follow-way.ts';
import type { Gray } from './gray.ts';
import type { Opencv } from './opencv.ts';
import type { Point } from './point.ts';
import type { VisionFailure } from './vision-failure.ts';

export type Follower = {
  /** In the seed picture. */
  readonly stills: readonly Point[];
  next(gray: Gray): FrameSight;
  state(): FollowState;
};

const LEAST_STILLS = 8;
const STILL_RADIUS_PX = 11;
const COARSE_PX = 4;
/** Samples across a thing's radius: more cost time and tell hardly more. */
const MOST_SAMPLES = 28;
/** Of the longer side: how near is near for what is carried. */
const NEAR_SHARE = 0.07;

export function startFollower(
  cv: Opencv,
  seed: Gray,
  question: FollowQuestion,
  resumed: FollowState | null,
): Result<Follower, FollowFailure | VisionFailure> {
  const longPx = Math.max(seed.widthPx, seed.heightPx);
  const size = Math.max(1, Math.round(longPx / 1920));
  const radiusPx = STILL_RADIUS_PX * size;
  const coarsePx = Math.max(2, Math.round((COARSE_PX * longPx) / 1920));
  const found = resumed
    ? ok(resumed.seedPlaces.flatMap((place) => patchOf(seed, place, radiusPx, size) ?? []))
    : findStills(cv, seed, question, radiusPx, size);
  if (!found.ok) return found;
  const patches = found.value;
  if (patches.length < LEAST_STILLS)
    return fail({ code: 'follow/too-few-still', found: patches.length, needed: LEAST_STILLS });

  const things: (Followable | null)[] = [];
  for (const thing of question.things) {
    const followable = followableOf(seed, thing, coarsePx);
    if (!followable && thing.how !== 'carried') return fail({ code: 'follow/no-feature', name: thing.name });
    things.push(followable);
  }
  const kit: Kit = {
    question,
    patches,
    rooms: patches.map(roomFor),
    looks: patches.map(({ place }) => lookOf(seed, place, coarsePx)),
    things,
    nearPx: NEAR_SHARE * longPx,
  };
  let state = resumed ?? startOf(patches, question);
  return ok({
    stills: patches.map(({ place }) => place),
    next: (gray) => {
      const after = followFrame(kit, state, gray);
      state = after.state;
      return after.sight;
    },
    state: () => state,
  });
}

type Kit = {
  readonly question: FollowQuestion;
  readonly patches: readonly Patch[];
  readonly rooms: readonly FitRoom[];
  readonly looks: readonly (Look | null)[];
  /** null of what is carried. */
  readonly things: readonly (Followable | null)[];
  readonly nearPx: number;
};

function followableOf(seed: Gray, thing: FollowedThing, coarsePx: number): Followable | null {
  if (thing.how === 'carried') return null;
  const stepPx = Math.max(1, Math.ceil(thing.radiusPx / MOST_SAMPLES));
  const patch = patchOf(seed, thing.placePx, thing.radiusPx, stepPx);
  const look = lookOf(seed, thing.placePx, coarsePx);
  return patch && look && { thing, patch, look, room: roomFor(patch), seed };
}

const UPRIGHT: PatchMap['steps'] = [1, 0, 0, 1];

function startOf(patches: readonly Patch[], { things }: FollowQuestion): FollowState {
  return {
    seedPlaces: patches.map(({ place }) => place),
    stills: patches.map(({ place }) => ({ place, steps: UPRIGHT, seen: true })),
    things: things.map(({ placePx }) => ({
      place: placePx,
      steps: UPRIGHT,
      seen: true,
      stepPx: [0, 0],
      turnRad: 0,
    })),
    shiftPx: [0, 0],
  };
}

type After = { readonly state: FollowState; readonly sight: FrameSight };

function followFrame(kit: Kit, state: FollowState, gray: Gray): After {
  const motion = motionSince(state, kit.looks, gray);
  if (!motion) return lostFrame(state, gray);
  const stills = followStills(kit, state, motion, gray);
  const pairs = stills.flatMap(({ sight }, i): readonly Moved[] =>
    sight ? [{ from: (kit.patches[i] as Patch).place, to: sight.placePx }] : [],
  );
  const things = kit.question.things.map((thing, i) => {
    const last = state.things[i] as ThingState;
    const there = carried(thing.placePx, pairs, kit.nearPx);
    if (!there) return lostThing(last, gray);
    const one = kit.things[i];
    if (!one) return carriedThing(there, gray);
    const expected = movedMap(motion, last);
    const way = wayOf(there, kit.question.reachPx);
    return followThing(one, gray, last, { expected, carried: there, way });
  });
  return {
    state: {
      seedPlaces: state.seedPlaces,
      stills: stills.map((still) => still.state),
      things: things.map((thing) => thing.state),
      shiftPx: shiftOf(motion, kit.question.aboutPx),
    },
    sight: { things: things.map(({ sight }) => sight), stills: stills.map(({ sight }) => sight) },
  };
}

function followStills({ patches, rooms, nearPx }: Kit, state: FollowState, motion: Motion, gray: Gray) {
  const first = patches.map((patch, i) => {
    const last = state.stills[i] as SpotState;
    return last.seen ? followStill(patch, gray, movedMap(motion, last), rooms[i] as FitRoom) : null;
  });
  const pairs = first.flatMap((still, i): readonly Moved[] =>
    still?.sight ? [{ from: (patches[i] as Patch).place, to: still.sight.placePx }] : [],
  );
  return first.map((still, i) => {
    if (still) return still;
    const patch = patches[i] as Patch;
    const there = carried(patch.place, pairs, nearPx);
    const expected = there ?? movedMap(motion, state.stills[i] as SpotState);
    return followStill(patch, gray, expected, rooms[i] as FitRoom);
  });
}

function movedMap(motion: Motion, { place, steps: [xx, xy, yx, yy] }: PatchMap): PatchMap {
  const { a, b } = motion;
  return {
    place: movedBy(motion, place),
    steps: [a * xx - b * yx, a * xy - b * yy, b * xx + a * yx, b * xy + a * yy],
  };
}

function shiftOf(motion: Motion, [x, y]: Point): Point {
  const [toX, toY] = movedBy(motion, [x, y]);
  return [toX - x, toY - y];
}

function carriedThing(
  { place, steps, sigmaPx }: PatchMap & { readonly sigmaPx: number },
  gray: Gray,
): { readonly state: ThingState; readonly sight: FollowedSight | Gap } {
  const state = { place, steps, seen: true, stepPx: [0, 0], turnRad: 0 } as const;
  return { state, sight: isIn(gray, place) ? { placePx: place, sigmaPx } : 'outside' };
}

function lostThing(last: ThingState, gray: Gray): { readonly state: ThingState; readonly sight: Gap } {
  const { place, steps } = last;
  const state = { place, steps, seen: false, stepPx: [0, 0], turnRad: 0 } as const;
  return { state, sight: isIn(gray, place) ? 'hidden' : 'outside' };
}

const isIn = ({ widthPx, heightPx }: Gray, [x, y]: Point) => x > 0 && y > 0 && x < widthPx && y < heightPx;

/** No motion is common: something is before the lens, or all of it is blurred. */
function lostFrame(state: FollowState, gray: Gray): After {
  const things = state.things.map((last) => lostThing(last, gray));
  return {
    state: {
      ...state,
      stills: state.stills.map((still) => ({ ...still, seen: false })),
      things: things.map((thing) => thing.state),
      shiftPx: [0, 0],
    },
    sight: { things: things.map(({ sight }) => sight), stills: state.stills.map(() => null) },
  };
}
