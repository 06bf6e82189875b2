/**
 * A rough pair made sharp: fitted in the scaled pictures, then in the pictures as they are, there and back.
 *
 * Model    the mean of the fit from the first picture to the second and of that back; sigma of the match: what the fits state, half
 *          of what they differ by, and a floor; shared evenly between both places (over the root of two each)
 * Fails    null where a fit fails, or there and back differ by more than a pixel
 */
import { fitPatch, inverseSteps, shown } from './fit-patch.ts';
import type { Gray } from './gray.ts';
import { minus, type Point } from './point.ts';
import type { ScaledGray } from './scaled-gray.ts';
import type { FoundTie } from './tie-sight.ts';

export type Picture = { readonly gray: Gray; readonly scaled: ScaledGray };
export type RoughTie = { readonly first: Point; readonly second: Point; readonly turnRad: number };

const SCALED_WINDOW = { halfPx: 9, mostShiftPx: 4 };
const WINDOW = { halfPx: 12, mostShiftPx: 4 };
/** A surface that is not flat is placed otherwise by a smaller part of it. */
const SMALL_WINDOW = { halfPx: 8, mostShiftPx: 1 };
const MOST_APART_PX = 1;
/** What the fits do not see: surfaces that bend within a window. Measured: docs/ties.md. */
const FLOOR_PX = 0.2;

/** rough: places of the scaled pictures. */
export function fitTie(one: Picture, other: Picture, rough: RoughTie): FoundTie | null {
  const [cos, sin] = [Math.cos(rough.turnRad), Math.sin(rough.turnRad)];
  const scaledPlace = pixelCentre(rough.first);
  const coarse = fitPatch(
    one.scaled.gray,
    scaledPlace,
    other.scaled.gray,
    { place: rough.second, steps: [cos, -sin, sin, cos] },
    SCALED_WINDOW,
  );
  if (!coarse.ok) return null;
  const place = pixelCentre(times(scaledPlace, 1 / one.scaled.scale));
  const near = shown(coarse.value, minus(times(place, one.scaled.scale), scaledPlace));
  const there = fitPatch(
    one.gray,
    place,
    other.gray,
    { place: times(near, 1 / other.scaled.scale), steps: coarse.value.steps },
    WINDOW,
  );
  if (!there.ok) return null;
  const inverse = inverseSteps(there.value.steps);
  const centre = pixelCentre(there.value.place);
  const backAt = shown({ place, steps: inverse }, minus(centre, there.value.place));
  const back = fitPatch(other.gray, centre, one.gray, { place: backAt, steps: inverse }, WINDOW);
  if (!back.ok) return null;
  const returned = shown(back.value, minus(there.value.place, centre));
  const apart = minus(place, returned);
  if (Math.hypot(...apart) > MOST_APART_PX) return null;
  const half = times(shown({ place: [0, 0], steps: there.value.steps }, apart), 0.5);
  const second: Point = [there.value.place[0] + half[0], there.value.place[1] + half[1]];
  const smaller = fitPatch(one.gray, place, other.gray, there.value, SMALL_WINDOW);
  if (!smaller.ok) return null;
  const byWindow = Math.hypot(...minus(smaller.value.place, there.value.place));
  const stated = Math.hypot(there.value.sigmaPx, back.value.sigmaPx, byWindow) / Math.SQRT2;
  return {
    firstPx: place,
    secondPx: second,
    sigmaPx: Math.hypot(stated, Math.hypot(...half), FLOOR_PX) / Math.SQRT2,
  };
}

const pixelCentre = ([x, y]: Point): Point => [Math.floor(x) + 0.5, Math.floor(y) + 0.5];
const times = ([x, y]: Point, by: number): Point => [x * by, y * by];
