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
  sought: Sought,
  starts: readonly Point[],
  steps: PatchMap['steps'],
): SoughtFit | null {
  const farPx = sought.radiusPx * timesLarger(steps);
  const placePx = middleOf(starts);
  const reachPx = Math.max(...starts.map((start) => apart(start, placePx))) + 3 * farPx;
  const fits = patchFits(known, other, sought, { placePx, reachPx }, starts, steps);
  const [best, ...others] = fits.filter(({ share }) => share > LEAST_SHARE);
  if (!best) return null;
  const rival = others.find(({ place }) => apart(place, best.place) > farPx);
  return { ...best, rival: rival?.likeness ?? 0 };
}

/** Those most alike first. within: the part of the other picture that is looked at. */
export function patchFits(
  known: Gray,
  other: Gray,
  { placePx, radiusPx, shadingPx }: Sought,
  within: { readonly placePx: Point; readonly reachPx: number },
  starts: readonly Point[],
  steps: PatchMap['steps'],
): readonly FollowFit[] {
  const size = timesLarger(steps);
  const here = lessShading(known, placePx, 2 * radiusPx, shadingPx);
  const there = lessShading(other, within.placePx, within.reachPx, shadingPx * size);
  const patch = here && patchOf(here.gray, minus(placePx, here.cornerPx), radiusPx, 1);
  if (!patch || !there) return [];
  const side = 2 * Math.ceil(ROOM * radiusPx * Math.max(1, size)) + 1;
  const room = { ...roomFor(patch), cutout: newCutout(side, side, 1) };
  return starts
    .flatMap((start) => {
      const fit = fitFollowed(patch, there.gray, { place: minus(start, there.cornerPx), steps }, room);
      return fit ? [{ ...fit, place: plus(fit.place, there.cornerPx) }] : [];
    })
    .sort((a, b) => b.likeness - a.likeness);
}

const timesLarger = (steps: PatchMap['steps']) =>
  Math.sqrt(Math.abs(steps[0] * steps[3] - steps[1] * steps[2]));

function middleOf(points: readonly Point[]): Point {
  const along = (axis: 0 | 1) => points.map((point) => point[axis]);
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return [middle(along(0)), middle(along(1))];
}
