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

/** In coarse samples, a five-hundredth of the longer side each. */
const REACHES = [3, 12, 26];
const LEAST_LIKENESS = 0.75;
const TOLERANCE_SAMPLES = 0.75;
/** Far reaches are costly, and a few places tell the motion as well. */
const MOST_FAR = 16;

export function motionSince(
  { stills, shiftPx }: FollowState,
  looks: readonly (Look | null)[],
  gray: Gray,
): Motion | null {
  const seen = stills.filter((spot) => spot.seen).length;
  for (const reach of REACHES) {
    const pairs: Moved[] = [];
    for (const [i, { place, seen: lately }] of stills.entries()) {
      const look = looks[i];
      if (!look || (seen >= 8 && !lately)) continue;
      if (reach !== REACHES[0] && pairs.length >= MOST_FAR) break;
      const about = [place[0] + shiftPx[0], place[1] + shiftPx[1]] as const;
      const found = mostAlike(look, gray, about, roomForLook(look, reach, reach));
      if (found && found.likeness > LEAST_LIKENESS) pairs.push({ from: place, to: found.place });
    }
    const step = looks.find((look) => look !== null)?.stepPx ?? 1;
    const motion = commonMotion(pairs, TOLERANCE_SAMPLES * step);
    if (motion && pairs.length >= Math.min(8, 0.4 * seen)) return motion;
  }
  return null;
}
