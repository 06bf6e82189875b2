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
import { nearnessOf } from './follow-carry.ts';
import { type FollowKit, followFrame } from './follow-frame.ts';
import { LOOK_HALF, lookOf } from './follow-look.ts';
import { motionSearch } from './follow-motion.ts';
import { type Patch, patchOf } from './follow-patch.ts';
import { roomFor } from './follow-residuals.ts';
import type { FollowedThing, FollowFailure, FollowQuestion, FrameSight } from './follow-sight.ts';
import type { FollowState } from './follow-state.ts';
import { findStills, stillOf } from './follow-stills.ts';
import type { Followable } from './follow-thing.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';
import { seedTape } from './seed-tape.ts';

export type Follower = {
  /** In the seed picture. */
  readonly stills: readonly Point[];
  /** withTape: with its graduations. */
  next(gray: Gray, withTape: boolean): FrameSight;
  state(): FollowState;
  /** One more from the same seed, for the other direction: what the seed shows is learned once. They look at frames by turns. */
  another(resumed: FollowState | null): Follower;
};

const LEAST_STILLS = 8;
const STILL_RADIUS_PX = 11;
const COARSE_PX = 4;
/** Of a coarse sample: how well coarse samples tell a place. */
const COARSE_SHARE = 0.4;
/** Samples across a thing's radius: more cost time and tell hardly more. */
const MOST_SAMPLES = 28;
/** Likewise: with more, a few of them do. */
const ENOUGH_SAMPLES = 16;
/** Of the longer side: how near is near for what is carried. */
const NEAR_SHARE = 0.1;
/** What lies about the chamber over what lies far off: there is less of it, and it is what the brake moves against. */
const NEAR_WEIGHT = 6;
/** Likewise: how far parallax may take a thing from the motion most have in common. */
const WIDE_SHARE = 0.03;

export function startFollower(
  seed: Gray,
  question: FollowQuestion,
  resumed: FollowState | null,
): Result<Follower, FollowFailure> {
  const longPx = Math.max(seed.widthPx, seed.heightPx);
  const size = Math.max(1, Math.round(longPx / 1920));
  const radiusPx = STILL_RADIUS_PX * size;
  const coarsePx = Math.max(2, Math.round((COARSE_PX * longPx) / 1920));
  // Before what stands still: a browser compiles for the sizes it met first, and these are no whole numbers.
  const things = question.things.map((thing) => followableOf(seed, thing, coarsePx));
  const patches = resumed
    ? resumed.seedPlaces.flatMap(
        (place) => stillOf(seed, place, question.aboutPx, { radiusPx, stepPx: size }) ?? [],
      )
    : findStills(seed, question, radiusPx, size);
  if (patches.length < LEAST_STILLS)
    return fail({ code: 'follow/too-few-still', found: patches.length, needed: LEAST_STILLS });
  const plain = question.things.find(({ how }, i) => how !== 'carried' && !things[i]);
  if (plain) return fail({ code: 'follow/no-feature', name: plain.name });
  const nearPx = NEAR_SHARE * longPx;
  const weights = patches.map(({ place }) => 1 + NEAR_WEIGHT * nearnessOf(place, question.aboutPx, nearPx));
  const looks = patches.map(({ place }) => lookOf(seed, place, coarsePx));
  const search = motionSearch(looks, weights);
  const kit: FollowKit = {
    question,
    stills: {
      patches,
      weights,
      rooms: patches.map(roomFor),
      looks,
      coarsePx: COARSE_SHARE * coarsePx,
      searchRoom: search.rooms[1],
      nearPx,
      widePx: WIDE_SHARE * longPx,
    },
    search,
    nearness: question.things.map(({ placePx }) =>
      patches.reduce((sum, { place }) => sum + nearnessOf(place, placePx, nearPx), 0),
    ),
    things,
    tape: seedTape(seed, question.tape),
  };
  return ok(followerFrom(kit, resumed));
}

function followerFrom(kit: FollowKit, resumed: FollowState | null): Follower {
  const { patches } = kit.stills;
  let state = resumed ?? startOf(patches, kit.question);
  return {
    stills: patches.map(({ place }) => place),
    next: (gray, withTape) => {
      const after = followFrame(kit, state, gray, withTape);
      state = after.state;
      return after.sight;
    },
    state: () => state,
    another: (other) => followerFrom(kit, other),
  };
}

function followableOf(seed: Gray, thing: FollowedThing, coarsePx: number): Followable | null {
  if (thing.how === 'carried') return null;
  const stepPx = Math.max(1, Math.ceil(thing.radiusPx / MOST_SAMPLES));
  const many = thing.radiusPx > ENOUGH_SAMPLES * stepPx;
  const patch = patchOf(seed, thing.placePx, thing.radiusPx, stepPx, many ? 'few' : 'all');
  const look = lookOf(seed, thing.placePx, coarsePx);
  const ownStepPx = Math.max(1, Math.floor(thing.radiusPx / (LOOK_HALF + 0.5)));
  const ownLook = lookOf(seed, thing.placePx, Math.min(coarsePx, ownStepPx));
  return patch && look && { thing, patch, look, ownLook, room: roomFor(patch), seed };
}

const UPRIGHT: PatchMap['steps'] = [1, 0, 0, 1];

function startOf(patches: readonly Patch[], { things }: FollowQuestion): FollowState {
  return {
    seedPlaces: patches.map(({ place }) => place),
    stills: patches.map(({ place }) => ({ place, lostFor: 0 })),
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
