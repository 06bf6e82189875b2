/**
 * Clevis pin and camshaft end of one picture, offered in another in which nobody marked them, each only where it is told surely.
 *
 * Model    what stands still about the chamber carries face and camshaft (guess-map.ts); from there the pin is sought along the rod's way,
 *          then the camshaft's end, turned as the pin's new place says (guess-ends.ts); the arm must be about as long as it was
 * Assumes  both pictures taken from about one place
 * Fails    'guess/few' where too little stands still in both; what is not found is listed with its reason. The face is not handed on: the
 *          rod's middle crosses it elsewhere once the rod has swivelled, by more than a hand is off
 */
import { ok, type Result } from '../basics/result.ts';
import type { EndMarks } from './assist-sight.ts';
import { shown } from './fit-patch.ts';
import { stepsOf } from './follow-common.ts';
import type { Gray } from './gray.ts';
import { guessCamshaft, guessPin } from './guess-ends.ts';
import { guessMap } from './guess-map.ts';
import type { FoundEnd, GuessFailure, GuessQuestion, GuessSight } from './guess-sight.ts';
import type { Opencv } from './opencv.ts';
import { apart, minus, type Point, plus } from './point.ts';
import { type SameEnd, UNFORESEEN_TURN_RAD } from './same-end.ts';

/** Seen up to some 35 degrees off square the turning arm changes its length in the picture by less. */
const MOST_ARM_CHANGE = 0.12;

export function guessMarks(
  cv: Opencv,
  known: Gray,
  other: Gray,
  question: GuessQuestion,
): Result<GuessSight, GuessFailure> {
  const { facePx, pin, camshaft } = question;
  const lengthPx = apart(facePx, pin.placePx);
  const map = guessMap(cv, known, other, { facePx, lengthPx });
  if (!map.ok) return map;
  const steps = stepsOf(map.value.motion);
  const carried = (place: Point) => map.value.carry(place)?.place ?? null;
  const marks: EndMarks = { facePx, pinPx: pin.placePx, camshaftPx: camshaft?.placePx ?? null };
  const faceHere = carried(facePx) ?? facePx;
  const rough: EndMarks = {
    facePx: faceHere,
    pinPx: plus(faceHere, shown({ place: [0, 0], steps }, minus(pin.placePx, facePx))),
    camshaftPx: camshaft && carried(camshaft.placePx),
  };
  const pinHere = guessPin(known, other, marks, rough, steps);
  if (!pinHere.ok) {
    const missed = [{ of: 'clevis-pin', because: pinHere.failure.code }] as const;
    return ok({
      found: [],
      missed: camshaft ? [...missed, { of: 'camshaft-end', because: 'no-pin' }] : missed,
    });
  }
  const pinFound = again('clevis-pin', pinHere.value, pin.sigmaPx);
  if (!camshaft) return ok({ found: [pinFound], missed: [] });
  const camshaftHere = guessCamshaft(known, other, marks, { ...rough, pinPx: pinHere.value.placePx });
  if (!camshaftHere.ok)
    return ok({ found: [pinFound], missed: [{ of: 'camshaft-end', because: camshaftHere.failure.code }] });
  const arm = apart(pin.placePx, camshaft.placePx) * Math.hypot(steps[0], steps[2]);
  const change = apart(pinHere.value.placePx, camshaftHere.value.placePx) / arm - 1;
  if (Math.abs(change) > MOST_ARM_CHANGE) {
    const because = 'off-arm';
    return ok({
      found: [],
      missed: [
        { of: 'clevis-pin', because },
        { of: 'camshaft-end', because },
      ],
    });
  }
  return ok({ found: [pinFound, again('camshaft-end', camshaftHere.value, camshaft.sigmaPx)], missed: [] });
}

/** What the known mark is off by, this one is as well, but for a turn that nobody foresaw. */
function again(of: FoundEnd['of'], { placePx, sigmaPx }: SameEnd, knownSigmaPx: number): FoundEnd {
  return { of, placePx, sigmaPx: Math.hypot(sigmaPx, UNFORESEEN_TURN_RAD[of] * knownSigmaPx) };
}
