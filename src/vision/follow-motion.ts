/**
 * How the whole picture moved since the last frame, told by all that stands still together: a hand or a passer-by does not pull it.
 *
 * Model    each still place goes on by its own last step, near ones farther than far ones; what the camera does otherwise than in the
 *          frame before is common to all: sought by coarse samples about there, then the motion most agree with; nothing agreed:
 *          further off, up to a twentieth of the picture's longer side, and as if nothing had gone on
 * Fails    null where no motion is common to half of them
 */
import { commonMotion, type Motion, type Weighed } from './follow-common.ts';
import { type Look, type LookRoom, mostAlike, roomForLook } from './follow-look.ts';
import type { FollowState } from './follow-state.ts';
import type { Gray } from './gray.ts';
import { type Point, plus } from './point.ts';

/** In coarse samples, a five-hundredth of the longer side each; the last only where all was lost. */
const REACHES = [2, 8, 26, 60];
const LEAST_LIKENESS = 0.75;
const TOLERANCE_SAMPLES = 0.75;
/** So many tell the motion as well as all, where the reach is far and costly. */
const MOST_FAR = 12;
/** Of those sought. */
const LEAST_SHARE = 0.4;
const ENOUGH_SEEN = 8;

export type MotionSearch = {
  readonly looks: readonly (Look | null)[];
  readonly weights: readonly number[];
  readonly rooms: readonly LookRoom[];
};

export function motionSearch(looks: readonly (Look | null)[], weights: readonly number[]): MotionSearch {
  const look = looks.find((each) => each !== null);
  return { looks, weights, rooms: look ? REACHES.map((reach) => roomForLook(look, reach, reach)) : [] };
}

/** motion: from where each would be if it went on (goesOn), or from where it was; from: these places. found: each still place by
 * itself, where it was sought and looks alike. */
export type MotionSeen = {
  readonly motion: Motion;
  readonly goesOn: boolean;
  readonly from: readonly Point[];
  readonly found: readonly (Point | null)[];
};

export function motionSince(
  { looks, weights, rooms }: MotionSearch,
  { stills, shiftPx }: FollowState,
  gray: Gray,
): MotionSeen | null {
  const seen = stills.filter(({ lostFor }) => lostFor === 0).length;
  const sought = stills.flatMap(({ lostFor }, i) => {
    const look = looks[i];
    return look && (seen < ENOUGH_SEEN || lostFor === 0) ? [{ i, look }] : [];
  });
  for (const [round, room] of rooms.entries()) {
    if (round === rooms.length - 1 && seen > 0) break;
    const tried = round === 0 ? sought : evenly(sought, MOST_FAR);
    // What jumped once will not jump so again.
    const goesOn = round < 2;
    const from = stills.map(({ place, stepPx }) => (goesOn ? plus(place, stepPx ?? shiftPx) : place));
    const found: (Point | null)[] = stills.map(() => null);
    for (const { i, look } of tried) {
      const alike = mostAlike(look, gray, from[i] as Point, room);
      if (alike && alike.likeness > LEAST_LIKENESS) found[i] = alike.place;
    }
    const pairs = from.flatMap((place, i): readonly Weighed[] => {
      const to = found[i];
      return to ? [{ from: place, to, weight: weights[i] as number }] : [];
    });
    if (pairs.length < LEAST_SHARE * tried.length) continue;
    const motion = commonMotion(pairs, TOLERANCE_SAMPLES * room.cutout.stepPx);
    if (motion) return { motion, goesOn, from, found };
  }
  return null;
}

function evenly<T>(list: readonly T[], most: number): readonly T[] {
  const count = Math.min(most, list.length);
  return Array.from({ length: count }, (_, i) => list[Math.floor((i * list.length) / count)] as T);
}
