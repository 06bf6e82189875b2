/** A place that stands still, sought in a frame near where it is expected. */
import type { PatchMap } from './fit-patch.ts';
import { type FitRoom, fitFollowed } from './follow-fit.ts';
import type { Patch } from './follow-patch.ts';
import type { FollowedSight } from './follow-sight.ts';
import type { SpotState } from './follow-state.ts';
import type { Gray } from './gray.ts';

const LEAST_LIKENESS = 0.85;
const LEAST_SHARE = 0.5;
/** In the patch's radii: parallax from frame to frame is less. */
const MOST_OFF = 0.5;
const MOST_SIGMA_PX = 0.5;
/** Seen so in rendered clips with noise, beyond what the residuals tell. */
const FLOOR_PX = 0.03;

export function followStill(
  patch: Patch,
  gray: Gray,
  expected: PatchMap,
  room: FitRoom,
): { readonly state: SpotState; readonly sight: FollowedSight | null } {
  const fit = fitFollowed(patch, gray, expected, room);
  const [x, y] = expected.place;
  const good =
    fit !== null &&
    fit.likeness > LEAST_LIKENESS &&
    fit.share > LEAST_SHARE &&
    fit.sigmaPx < MOST_SIGMA_PX &&
    Math.hypot(fit.place[0] - x, fit.place[1] - y) < MOST_OFF * patch.radiusPx &&
    keepsShape(fit, expected);
  if (!good) return { state: { place: expected.place, steps: expected.steps, seen: false }, sight: null };
  const { place, steps } = fit;
  const sigmaPx = Math.hypot(fit.sigmaPx, FLOOR_PX * patch.stepPx);
  return { state: { place, steps, seen: true }, sight: { placePx: place, sigmaPx } };
}

/** From frame to frame no part changes its shape by much. */
const MOST_CHANGE = 0.25;

export function keepsShape({ steps }: PatchMap, expected: PatchMap): boolean {
  return steps.every((step, i) => Math.abs(step - (expected.steps[i] as number)) < MOST_CHANGE);
}
