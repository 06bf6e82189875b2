/**
 * Whether an adjuster takes up, by how far the wrench on its hex turned.
 *
 * Rule     stands before the measurement. Against 5 degrees in all, with a guard band of three standard uncertainties either way:
 *          takes up           the turn less 3 u is over 5 degrees, the way that takes up, over two applications or more
 *          does not take up   at every picture the turn plus 3 u is under 5 degrees either way, over four applications or more
 *          cannot tell        otherwise; also where the wrench went back by as much between two pictures, went by more than 30 degrees an
 *                             application, or nobody said which way it was backed off
 *          5 degrees: less than that a wrench rocks in the play it has on the hex. A sound adjuster that was backed off by a quarter
 *          turn and is back after twelve applications makes 7.5 degrees in each, and more in the first ones.
 *          30 degrees: flats of a hex and notches of a ring are no nearer, so that a wrench put on anew shows as this or more.
 *          Three, not the 1.645 of a stroke: marks of a hand have gross errors, and a wrench that stands still must not pass.
 * Source   the hex must creep in steps over full applications: adjuster makers' manuals (excerpts). Two to four full applications a day
 *          keep an adjuster, a badly set one may need up to twelve: a provincial air brake manual (excerpt). Back off by a quarter to
 *          half a turn: drivers' manuals (excerpts). 5 and 30 degrees, two and four applications: common practice, no source.
 */
import { radFromDeg } from '../basics/units.ts';
import type { AdjusterTurn } from '../measurement/adjuster-turn.ts';

export type AdjusterAnswer = 'takes-up' | 'does-not-take-up' | 'cannot-tell';
export type BackedOff = 'clockwise' | 'counter-clockwise';

export type AdjusterReason =
  | 'adjuster/few-applications'
  | 'adjuster/near-least-turn'
  | 'adjuster/direction-not-said'
  | 'adjuster/turned-off'
  | 'adjuster/went-back'
  | 'adjuster/too-fast';

export type AdjusterDecision = {
  readonly answer: AdjusterAnswer;
  /** Why it cannot be told; empty where it can. */
  readonly reasons: readonly AdjusterReason[];
};

const LEAST_TURN_RAD = radFromDeg(5);
/** Of one application. */
const MOST_TURN_RAD = radFromDeg(30);
const ADJUSTER_GUARD = 3;
const LEAST_TO_TAKE_UP = 2;
const LEAST_TO_FAIL = 4;

export function decideAdjuster(turn: AdjusterTurn, backedOff: BackedOff | null): AdjusterDecision {
  const { places, applications } = turn;
  const { value, u } = turn.totalRad;
  const guard = ADJUSTER_GUARD * u;
  const still = places.every(
    ({ turnRad }) => Math.abs(turnRad.value) + ADJUSTER_GUARD * turnRad.u < LEAST_TURN_RAD,
  );
  if (still)
    return applications < LEAST_TO_FAIL
      ? cannotTell('adjuster/few-applications')
      : { answer: 'does-not-take-up', reasons: [] };
  if (Math.abs(value) - guard <= LEAST_TURN_RAD) return cannotTell('adjuster/near-least-turn');
  if (backedOff === null) return cannotTell('adjuster/direction-not-said');
  const takesUp = backedOff === 'clockwise' ? -1 : 1;
  if (Math.sign(value) !== takesUp) return cannotTell('adjuster/turned-off');
  if (wentBack(turn, takesUp)) return cannotTell('adjuster/went-back');
  if (isTooFast(turn)) return cannotTell('adjuster/too-fast');
  if (applications < LEAST_TO_TAKE_UP) return cannotTell('adjuster/few-applications');
  return { answer: 'takes-up', reasons: [] };
}

function cannotTell(reason: AdjusterReason): AdjusterDecision {
  return { answer: 'cannot-tell', reasons: [reason] };
}

/** Anywhere against the way it went in all, by more than play and the places' own uncertainty. */
function wentBack({ places }: AdjusterTurn, way: 1 | -1): boolean {
  return places.slice(1).some((place, i) => {
    const before = places[i] as typeof place;
    const step = way * (place.turnRad.value - before.turnRad.value);
    const u = Math.hypot(place.turnRad.u, before.turnRad.u);
    return step + ADJUSTER_GUARD * u < -LEAST_TURN_RAD;
  });
}

/** From one picture to the next: the wrench was put on anew, or moved by hand. */
function isTooFast({ places }: AdjusterTurn): boolean {
  return places.slice(1).some((place, i) => {
    const before = places[i] as typeof place;
    const made = place.applicationsBefore - before.applicationsBefore;
    return Math.abs(place.turnRad.value - before.turnRad.value) > made * MOST_TURN_RAD;
  });
}
