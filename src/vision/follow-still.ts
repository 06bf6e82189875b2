/** A place that stands still, sought in a frame near where it is expected. */
import type { PatchMap } from './fit-patch.ts';
import { fitFollowed } from './follow-fit.ts';
import type { Patch } from './follow-patch.ts';
import type { FitRoom } from './follow-residuals.ts';
import type { FollowedSight } from './follow-sight.ts';
import type { Gray } from './gray.ts';

const LEAST_LIKENESS = 0.85;
const LEAST_SHARE = 0.5;
/** In the patch's radii: parallax from frame to frame is less. */
const MOST_OFF = 0.5;
const MOST_SIGMA_PX = 0.5;
/** Relative: beyond, the patch shows two things at different distances. */
const MOST_CHANGE = 0.25;
/** Where it shows two things, or one in relief, its shape changes as its place is off: found so in rendered clips. */
const OFF_PER_CHANGE = 0.2;
/** Coding leaves this beyond what the residuals tell: found so in rendered clips. */
export const FLOOR_PX = 0.07;

/** null where it is not seen. expected: where, and in which shape were it flat and square to the camera. */
export function followStill(
  patch: Patch,
  gray: Gray,
  expected: PatchMap,
  room: FitRoom,
): FollowedSight | null {
  const fit = fitFollowed(patch, gray, expected, room);
  if (!fit || !(fit.likeness > LEAST_LIKENESS && fit.share > LEAST_SHARE)) return null;
  const [dx, dy] = [fit.place[0] - expected.place[0], fit.place[1] - expected.place[1]];
  const change = changeOf(fit, expected);
  if (!(Math.hypot(dx, dy) < MOST_OFF * patch.radiusPx && change < MOST_CHANGE)) return null;
  const sigmaPx = Math.hypot(fit.sigmaPx, FLOOR_PX * patch.stepPx, OFF_PER_CHANGE * change * patch.radiusPx);
  return sigmaPx < MOST_SIGMA_PX * patch.stepPx ? { placePx: fit.place, sigmaPx } : null;
}

export function changeOf({ steps }: PatchMap, expected: PatchMap): number {
  return Math.hypot(...steps.map((step, i) => step - (expected.steps[i] as number)));
}
