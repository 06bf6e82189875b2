/**
 * How the whole picture moved since the last frame, told by all that stands still together: a hand or a passer-by does not pull it.
 *
 * Model    each still place sought by coarse samples about where the last motion would take it, then the motion most agree with;
 *          nothing agreed: further off, up to a twentieth of the picture's longer side
 * Fails    null where no motion is common to half of them
 */
import { commonMotion, type Motion, type Moved } from './follow-common.ts';
import { type Look, mostAlike, roomForLook } from './follow-look.ts';
import type { FollowState } from './follow-state.ts';
import type { Gray } from './gray.ts';

/** In coarse samples, a five-hundredth of the longer side each; the last only where all was lost. */
const REACHES = [3, 12, 26, 60];
const LEAST_LIKENESS = 0.75;
const TOLERANCE_SAMPLES = 0.75;
/** Far reaches are costly, and a few places tell the motion as well. */
const MOST_FAR = 12;
const ENOUGH_SEEN = 8;

export function motionSince(
  { stills, shiftPx }: FollowState,
  looks: readonly (Look | null)[],
  gray: Gray,
): Motion | null {
  const seen = stills.filter(({ lostFor }) => lostFor === 0).length;
  const sought = stills.flatMap(({ place, lostFor }, i) => {
    const look = looks[i];
    return look && (seen < ENOUGH_SEEN || lostFor === 0) ? [{ look, place }] : [];
  });
  for (const [round, reach] of REACHES.entries()) {
    if (round === REACHES.length - 1 && seen > 0) break;
    const pairs: Moved[] = [];
    for (const { look, place } of round === 0 ? sought : sought.slice(0, MOST_FAR)) {
      const about = [place[0] + shiftPx[0], place[1] + shiftPx[1]] as const;
      const found = mostAlike(look, gray, about, roomForLook(look, reach, reach));
      if (found && found.likeness > LEAST_LIKENESS) pairs.push({ from: place, to: found.place });
    }
    if (pairs.length < LEAST_SHARE * Math.min(sought.length, MOST_FAR)) continue;
    const motion = commonMotion(pairs, TOLERANCE_SAMPLES * (sought[0]?.look.stepPx ?? 1));
    if (motion) return motion;
  }
  return null;
}

const LEAST_SHARE = 0.4;
