/**
 * Clevis pin and camshaft end of one picture, found again in another one in which nobody marked them.
 *
 * Model    the pin's look sought along the rod's way, from somewhat back to as far out as strokes go; it must be clearly more alike than
 *          any other place there; then found sharp (same-end.ts), back in the first picture too, and its parts each for themselves
 *          the camshaft's end where what stands still carries it, turned as the pin's new place says; as sharp, as strictly
 * Assumes  the way runs in the other picture as what stands still has moved
 * Fails    with the reason
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { EndMarks } from './assist-sight.ts';
import { type PatchMap, shown } from './fit-patch.ts';
import type { Gray } from './gray.ts';
import type { GuessMissed } from './guess-sight.ts';
import { apart, minus, type Point, plus } from './point.ts';
import { endSteps, type SameEnd, type SameEndQuestion, sameEnd } from './same-end.ts';
import { type SoughtFit, soughtPatch } from './sought-patch.ts';

/** Over the length from face to pin, 110 mm and more: a stroke ends before 3 1/2 in. */
const BACK = 0.1;
const OUT = 0.8;
/** The arm's arc, the rod's tilt, and what the carried face is off by. */
const BESIDE = 0.3;
const RADIUS = { 'clevis-pin': 0.085, 'camshaft-end': 0.15 } as const;
const LEAST_RADIUS_PX = 7;
/** Over the radius: from how far a fit finds its place. */
const STEP = 0.35;
const SHADINGS = [0.3, 0.9] as const;
const LEAST_LIKENESS = 0.8;
const CLEARLY = 0.08;
/** Of a place found by search, for the sharp one. */
const ROUGH_PX = 1.5;
/** Over the length from face to pin: of the camshaft's end, carried past things at other depths. */
const CAMSHAFT_OFF = 0.04;
const MOST_BACK_PX = 1;
/** Over the radius: where parts are looked at, and how large they are. */
const PARTS = 6;
const PART_AT = 0.55;
const PART_RADIUS = 0.6;
const MOST_APART_PX = 0.7;
const MOST_APART = 0.04;

type Kind = SameEndQuestion['of'];
export type Missed = { readonly code: GuessMissed };

/** here: roughly, what is sought at its best guess. */
export function guessPin(
  known: Gray,
  other: Gray,
  marks: EndMarks,
  here: EndMarks,
  steps: PatchMap['steps'],
): Result<SameEnd, Missed> {
  const rod = minus(here.pinPx, here.facePx);
  const radiusPx = Math.max(LEAST_RADIUS_PX, RADIUS['clevis-pin'] * apart(marks.facePx, marks.pinPx));
  const by = (STEP * radiusPx) / Math.hypot(...rod);
  const starts: Point[] = [];
  for (let out = -BACK; out <= OUT; out += by)
    for (let beside = -BESIDE; beside <= BESIDE; beside += by)
      starts.push(plus(here.pinPx, [out * rod[0] - beside * rod[1], out * rod[1] + beside * rod[0]]));
  const fit = clearest(known, other, marks.pinPx, radiusPx, starts, steps);
  if (!fit.ok) return fit;
  const pinPx = fit.value.place;
  return sharp(known, other, 'clevis-pin', marks, { ...here, pinPx }, ROUGH_PX, radiusPx);
}

/** here: its rough place beside the pin that was found. */
export function guessCamshaft(
  known: Gray,
  other: Gray,
  marks: EndMarks,
  here: EndMarks,
): Result<SameEnd, Missed> {
  const lengthPx = apart(marks.facePx, marks.pinPx);
  const radiusPx = Math.max(LEAST_RADIUS_PX, RADIUS['camshaft-end'] * lengthPx);
  return sharp(known, other, 'camshaft-end', marks, here, CAMSHAFT_OFF * lengthPx, radiusPx);
}

function clearest(
  known: Gray,
  other: Gray,
  placePx: Point,
  radiusPx: number,
  starts: readonly Point[],
  steps: PatchMap['steps'],
): Result<SoughtFit, Missed> {
  let missed: Missed = { code: 'unlike' };
  for (const shading of SHADINGS) {
    const sought = { placePx, radiusPx, shadingPx: shading * radiusPx };
    const fit = soughtPatch(known, other, sought, starts, steps);
    if (!fit || fit.likeness < LEAST_LIKENESS) continue;
    if (fit.likeness > fit.rival + CLEARLY) return ok(fit);
    missed = { code: 'two-places' };
  }
  return fail(missed);
}

function sharp(
  known: Gray,
  other: Gray,
  of: Kind,
  marks: EndMarks,
  here: EndMarks,
  roughSigmaPx: number,
  radiusPx: number,
): Result<SameEnd, Missed> {
  const found = sameEnd(known, other, { of, known: marks, rough: here, roughSigmaPx });
  if (!found.ok) return fail({ code: found.failure.code === 'same/unlike' ? 'unlike' : 'two-places' });
  const there = withEnd(here, of, found.value.placePx);
  const back = sameEnd(other, known, { of, known: there, rough: marks, roughSigmaPx: ROUGH_PX });
  if (!back.ok || apart(back.value.placePx, endOf(marks, of)) > MOST_BACK_PX)
    return fail({ code: 'not-back' });
  return partsAgree(known, other, of, marks, there, radiusPx) ? found : fail({ code: 'parts-apart' });
}

/** Something that lies over a part, and does not go along with the rest, is found elsewhere or not at all. */
function partsAgree(
  known: Gray,
  other: Gray,
  of: Kind,
  marks: EndMarks,
  here: EndMarks,
  radiusPx: number,
): boolean {
  const [from, to] = [endOf(marks, of), endOf(here, of)];
  const shadingPx = SHADINGS[0] * radiusPx;
  const whole = soughtPatch(
    known,
    other,
    { placePx: from, radiusPx, shadingPx },
    [to],
    endSteps(marks, here, of),
  );
  if (!whole) return false;
  const mostPx = Math.max(MOST_APART_PX, MOST_APART * radiusPx);
  return Array.from({ length: PARTS }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / PARTS;
    return [PART_AT * radiusPx * Math.cos(turn), PART_AT * radiusPx * Math.sin(turn)];
  }).every((off) => {
    const there = shown(whole, off);
    const part = { placePx: plus(from, off), radiusPx: PART_RADIUS * radiusPx, shadingPx };
    const fit = soughtPatch(known, other, part, [there], whole.steps);
    return fit !== null && apart(fit.place, there) < mostPx;
  });
}

const endOf = ({ pinPx, camshaftPx }: EndMarks, of: Kind): Point =>
  of === 'clevis-pin' ? pinPx : (camshaftPx ?? pinPx);

const withEnd = (marks: EndMarks, of: Kind, place: Point): EndMarks =>
  of === 'clevis-pin' ? { ...marks, pinPx: place } : { ...marks, camshaftPx: place };
