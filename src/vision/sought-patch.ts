/**
 * What one place of a picture looks like, sought from many starts in another one.
 *
 * Model    the look without slow shading, fitted from each start with shape and light free (follow-fit.ts); the one most alike, and the
 *          most alike of those that lie farther from it than the patch's radius
 * Fails    null where the patch shows nothing that holds a place, or no fit from any start settles
 */
import type { PatchMap } from './fit-patch.ts';
import { newCutout } from './follow-cutout.ts';
import { type FollowFit, fitFollowed } from './follow-fit.ts';
import { patchOf } from './follow-patch.ts';
import { roomFor } from './follow-residuals.ts';
import type { Gray } from './gray.ts';
import { lessShading } from './less-shading.ts';
import { apart, minus, type Point, plus } from './point.ts';

/** shadingPx: what is slower across the picture than this is shading. */
export type Sought = { readonly placePx: Point; readonly radiusPx: number; readonly shadingPx: number };

/** rival: likeness of the next best place. */
export type SoughtFit = FollowFit & { readonly rival: number };

/** Over the radius: what a fit may come to need about its start. */
const ROOM = 1.35;
const LEAST_SHARE = 0.5;

/** starts: one at least; steps: how the other picture roughly shows what is there. */
export function soughtPatch(
  known: Gray,
  other: Gray,
  { placePx, radiusPx, shadingPx }: Sought,
  starts: readonly Point[],
  steps: PatchMap['steps'],
): SoughtFit | null {
  const size = Math.sqrt(Math.abs(steps[0] * steps[3] - steps[1] * steps[2]));
  const about = middleOf(starts);
  const reachPx = Math.max(...starts.map((start) => apart(start, about))) + 3 * radiusPx * size;
  const here = lessShading(known, placePx, 2 * radiusPx, shadingPx);
  const there = lessShading(other, about, reachPx, shadingPx * size);
  const patch = here && patchOf(here.gray, minus(placePx, here.cornerPx), radiusPx, 1);
  if (!patch || !there) return null;
  const side = 2 * Math.ceil(ROOM * radiusPx * Math.max(1, size)) + 1;
  const room = { ...roomFor(patch), cutout: newCutout(side, side, 1) };
  const fits = starts.flatMap((start) => {
    const fit = fitFollowed(patch, there.gray, { place: minus(start, there.cornerPx), steps }, room);
    return fit && fit.share > LEAST_SHARE ? [fit] : [];
  });
  const best = fits.sort((a, b) => b.likeness - a.likeness)[0];
  if (!best) return null;
  const rival = fits.find(({ place }) => apart(place, best.place) > radiusPx * size);
  return { ...best, place: plus(best.place, there.cornerPx), rival: rival?.likeness ?? 0 };
}

function middleOf(points: readonly Point[]): Point {
  const along = (axis: 0 | 1) => points.map((point) => point[axis]);
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return [middle(along(0)), middle(along(1))];
}
