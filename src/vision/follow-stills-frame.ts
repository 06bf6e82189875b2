/**
 * All that stands still, in one frame: those seen lately where the picture's motion takes them, the others where those carry them.
 */
import type { PatchMap } from './fit-patch.ts';
import { carried, type StillPair } from './follow-carry.ts';
import { commonMotion, type Motion, movedBy } from './follow-common.ts';
import type { Cutout } from './follow-cutout.ts';
import { type Look, mostAlike } from './follow-look.ts';
import type { MotionSeen } from './follow-motion.ts';
import type { Patch } from './follow-patch.ts';
import type { FitRoom } from './follow-residuals.ts';
import type { FollowedSight } from './follow-sight.ts';
import type { StillState } from './follow-state.ts';
import { followStill } from './follow-still.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type Stills = {
  readonly patches: readonly Patch[];
  readonly rooms: readonly FitRoom[];
  readonly looks: readonly (Look | null)[];
  /** Finer than this the common motion is the better guess. */
  readonly coarsePx: number;
  /** For what was lost. */
  readonly searchRoom: Cutout | undefined;
  /** How near is near for what is carried. */
  readonly nearPx: number;
  /** How far parallax may take one from the motion most have in common since the seed picture. */
  readonly widePx: number;
};

export type StillsSeen = {
  readonly states: readonly StillState[];
  readonly sights: readonly (FollowedSight | null)[];
  readonly pairs: readonly StillPair[];
  /** From the seed picture to this frame. */
  readonly whole: Motion;
};

/** What was lost long ago is tried in one frame of so many, each in another. */
const SELDOM = 6;
const LONG = 3;
/** Of widePx: how far one may part from the others from frame to frame. */
const APART = 0.25;
/** Of likenesses. */
const CLEARLY = 0.1;

/** null where those seen lately no longer agree about one motion since the seed picture. */
export function stillsIn(
  stills: Stills,
  last: readonly StillState[],
  { motion, found }: MotionSeen,
  gray: Gray,
): StillsSeen | null {
  const { patches, rooms, nearPx, widePx } = stills;
  const places = last.map(({ place }, i) => {
    const common = movedBy(motion, place);
    const own = found[i];
    if (!own) return common;
    const apartPx = Math.hypot(own[0] - common[0], own[1] - common[1]);
    return apartPx > stills.coarsePx && apartPx < APART * widePx ? own : common;
  });
  const anySeen = last.some(({ lostFor }) => lostFor === 0);
  const lately = (i: number) => !anySeen || last[i]?.lostFor === 0;
  const before = commonMotion(
    patches.map(({ place }, i) => ({ from: place, to: at(places, i) })).filter((_, i) => lately(i)),
    widePx,
  );
  if (!before) return null;
  const steps = stepsOf(before);
  const first = patches.map((patch, i) =>
    lately(i) ? followStill(patch, gray, { place: at(places, i), steps }, at(rooms, i)) : null,
  );
  const known = pairsOf(patches, first);
  const whole = commonMotion(known, widePx);
  if (!whole) return null;
  const sights = first.map((sight, i) => {
    const { lostFor } = at(last, i);
    if (lately(i) || (lostFor > LONG && (lostFor + i) % SELDOM !== 0)) return sight;
    const patch = at(patches, i);
    const there = carried(patch.place, known, whole, { reachPx: nearPx, fullNearness: 1 });
    const place = there && soughtAbout(stills, i, gray, there.place);
    return place && followStill(patch, gray, { place, steps: stepsOf(whole) }, at(rooms, i));
  });
  const states = sights.map((sight, i) =>
    sight ? { place: sight.placePx, lostFor: 0 } : { place: at(places, i), lostFor: at(last, i).lostFor + 1 },
  );
  return { states, sights, pairs: pairsOf(patches, sights), whole };
}

function soughtAbout({ looks, searchRoom }: Stills, i: number, gray: Gray, place: Point): Point {
  const look = looks[i];
  const alike = look && searchRoom && mostAlike(look, gray, place, searchRoom);
  return alike && alike.likeness > alike.rival + CLEARLY ? alike.place : place;
}

const stepsOf = ({ a, b }: Motion): PatchMap['steps'] => [a, -b, b, a];

function pairsOf(patches: readonly Patch[], sights: readonly (FollowedSight | null)[]): readonly StillPair[] {
  return sights.flatMap((sight, i) =>
    sight ? [{ from: at(patches, i).place, to: sight.placePx, sigmaPx: sight.sigmaPx }] : [],
  );
}

function at<T>(list: readonly T[], i: number): T {
  return list[i] as T;
}
