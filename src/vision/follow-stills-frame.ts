/**
 * All that stands still, in one frame: those seen lately where the picture's motion takes them, the others where those carry them.
 */
import { carried, type StillPair } from './follow-carry.ts';
import { closestMotion, type Motion, movedBy, stepsOf, type Weighed } from './follow-common.ts';
import { type Look, type LookRoom, mostAlike } from './follow-look.ts';
import type { MotionSeen } from './follow-motion.ts';
import type { Patch } from './follow-patch.ts';
import type { FitRoom } from './follow-residuals.ts';
import type { FollowedSight } from './follow-sight.ts';
import type { StillState } from './follow-state.ts';
import { followStill } from './follow-still.ts';
import type { Gray } from './gray.ts';
import { minus, type Point } from './point.ts';

export type Stills = {
  readonly patches: readonly Patch[];
  /** How much each counts where they do not move alike. */
  readonly weights: readonly number[];
  readonly rooms: readonly FitRoom[];
  readonly looks: readonly (Look | null)[];
  /** Finer than this the common motion is the better guess. */
  readonly coarsePx: number;
  /** For what was lost. */
  readonly searchRoom: LookRoom | undefined;
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
  /** As in the state. */
  readonly shiftPx: Point;
};

/** What was lost long ago is tried in one frame of so many, each in another. */
const SELDOM = 6;
const LONG = 3;
/** Of widePx. */
const TOLERANCES = [1 / 8, 1 / 4, 1 / 2, 1];
/** Of widePx: how far one may part from the others from frame to frame. */
const APART = 0.25;
/** Of likenesses. */
const CLEARLY = 0.1;

/** null where those seen lately no longer agree about one motion since the seed picture. */
export function stillsIn(
  stills: Stills,
  last: readonly StillState[],
  { motion, from, found }: MotionSeen,
  gray: Gray,
): StillsSeen | null {
  const { patches, weights, rooms, nearPx, widePx } = stills;
  const places = from.map((place, i) => {
    const next = movedBy(motion, place);
    const own = found[i];
    if (!own) return next;
    const apartPx = Math.hypot(own[0] - next[0], own[1] - next[1]);
    return apartPx > stills.coarsePx && apartPx < APART * widePx ? own : next;
  });
  const anySeen = last.some(({ lostFor }) => lostFor === 0);
  const lately = (i: number) => !anySeen || last[i]?.lostFor === 0;
  const tolerancesPx = TOLERANCES.map((share) => share * widePx);
  const before = closestMotion(
    patches
      .map(({ place }, i) => ({ from: place, to: at(places, i), weight: at(weights, i) }))
      .filter((_, i) => lately(i)),
    tolerancesPx,
  );
  if (!before) return null;
  const steps = stepsOf(before);
  const seekFrom = (i: number, place: Point | null) =>
    place && followStill(at(patches, i), gray, { place, steps }, at(rooms, i));
  const first = patches.map((_, i) => {
    if (!lately(i)) return null;
    const place = at(places, i);
    // A hand that turns about takes near things elsewhere than their last steps said.
    return seekFrom(i, place) ?? seekFrom(i, soughtAbout(stills, i, gray, place));
  });
  const known = pairsOf(stills, first);
  const whole = closestMotion(known, tolerancesPx);
  if (!whole) return null;
  const sights = first.map((sight, i) => {
    const { lostFor } = at(last, i);
    if (lately(i) || (lostFor > LONG && (lostFor + i) % SELDOM !== 0)) return sight;
    const patch = at(patches, i);
    const there = carried(patch.place, known, whole, { reachPx: nearPx, fullNearness: 1 });
    const place = there && (soughtAbout(stills, i, gray, there.place) ?? there.place);
    return place && followStill(patch, gray, { place, steps: stepsOf(whole) }, at(rooms, i));
  });
  const states = sights.map((sight, i): StillState => {
    const { place, lostFor } = at(last, i);
    if (!sight) return { place: at(places, i), lostFor: lostFor + 1 };
    const stepPx = minus(sight.placePx, place);
    return { place: sight.placePx, lostFor: 0, ...(lostFor === 0 && { stepPx }) };
  });
  return { states, sights, pairs: pairsOf(stills, sights), whole, shiftPx: nearShift(weights, states) };
}

/** Mean of the steps, by weights; nothing where none was seen twice. */
function nearShift(weights: readonly number[], states: readonly StillState[]): Point {
  let [x, y, sum] = [0, 0, 0];
  for (const [i, { stepPx }] of states.entries()) {
    if (!stepPx) continue;
    const weight = at(weights, i) ** 2;
    x += weight * stepPx[0];
    y += weight * stepPx[1];
    sum += weight;
  }
  return sum > 0 ? [x / sum, y / sum] : [0, 0];
}

/** null where no place is clearly like it. */
function soughtAbout({ looks, searchRoom }: Stills, i: number, gray: Gray, place: Point): Point | null {
  const look = looks[i];
  const alike = look && searchRoom && mostAlike(look, gray, place, searchRoom);
  return alike && alike.likeness > alike.rival + CLEARLY ? alike.place : null;
}

type Pair = StillPair & Weighed;

function pairsOf({ patches, weights }: Stills, sights: readonly (FollowedSight | null)[]): readonly Pair[] {
  return sights.flatMap((sight, i) => {
    if (!sight) return [];
    const { placePx, sigmaPx } = sight;
    return [{ from: at(patches, i).place, to: placePx, sigmaPx, weight: at(weights, i) }];
  });
}

function at<T>(list: readonly T[], i: number): T {
  return list[i] as T;
}
