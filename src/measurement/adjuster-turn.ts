/**
 * How far a wrench on an adjuster's hex has turned over a series of applications.
 *
 * Model    direction in each picture    b = atan2(tip - centre), less the arm's direction, from camshaft end to pin: the arm comes back to
 *          its place each time the brake is released
 *          turn in the wrench's plane   a(b) of each sight that is possible (hex-sight.ts), where the focal length is not known through
 *                                       each of several lenses, each weighing w = weight x exp(-chi2 / 2),
 *                                       chi2 of the lengths seen about one length
 *          of pictures after the same number of applications the mean; total = last mean less first
 *          u^2 = sum w u_k^2 + sum w (q_k - q)^2,   u_k^2 = (da/db)^2 (u_b^2 + u_arm^2 + (sway slope)^2) of both ends,
 *          u_b^2 = (sigma_centre^2 + sigma_tip^2) / length^2
 *          the camera stood still where that is said and the arm's marks agree (camera-stood.ts); neither alone will do
 * Assumes  the brake released in every picture; the same spot of the wrench; less than half a turn between two pictures
 * Fails    'adjuster-turn/too-few': fewer than two numbers of applications; 'adjuster-turn/no-arm': the arm is not marked in every
 *          picture, so that a camera that turned cannot be told from a wrench that did; 'adjuster-turn/short': a direction of 10 degrees
 *          or more of uncertainty; 'adjuster-turn/lengths-differ': no sight makes the lengths one length; 'adjuster-turn/too-far': near
 *          half a turn from one picture to the next; 'adjuster-turn/put-over': the wrench was put over on the hex before the last number
 */
import { chiSquareUpperTail } from '../basics/chi-square.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { radFromDeg } from '../basics/units.ts';
import { cameraStood } from './camera-stood.ts';
import type { Uncertain } from './clip-measurement.ts';
import { ANY_SIGHT } from './hex-sight.ts';
import { K95 } from './measured-from.ts';
import {
  type ArmedPicture,
  type Direction,
  directionsSeen,
  type WrenchPicture,
} from './wrench-directions.ts';
import { type AnglesOfSight, anglesOfSights, type Lens } from './wrench-sights.ts';

export type AdjusterTurn = {
  /** Clockwise as the pictures show it, positive. */
  readonly totalRad: Uncertain;
  /** Between the first and the last picture. */
  readonly applications: number;
  readonly perApplicationRad: Uncertain;
  /** Where the wrench stood, against the first: of each number of applications one. The first has no u: it is what is counted from. */
  readonly places: readonly { readonly applicationsBefore: number; readonly turnRad: Uncertain }[];
  /** Direction of the wrench in the first picture, to draw it. */
  readonly firstDirectionRad: number;
  /** Said, and the arm's marks agree. */
  readonly cameraStood: boolean;
  /** Pictures of the wrench put over on the hex after the last application. */
  readonly putOver: number;
};

export type AdjusterTurnFailure =
  | { readonly code: 'adjuster-turn/too-few'; readonly have: number }
  | { readonly code: 'adjuster-turn/no-arm'; readonly unmarked: number }
  | { readonly code: 'adjuster-turn/short'; readonly applicationsBefore: number; readonly uRad: number }
  | { readonly code: 'adjuster-turn/lengths-differ'; readonly pValue: number }
  | { readonly code: 'adjuster-turn/too-far'; readonly applicationsBefore: number; readonly turnRad: number }
  | { readonly code: 'adjuster-turn/put-over'; readonly applicationsBefore: number };

/** What a turn should be told within, by its expanded uncertainty: below, more is asked of whoever takes the pictures. */
const TOLD_WITHIN_RAD = radFromDeg(3);

export const isToldWell = ({ totalRad }: Pick<AdjusterTurn, 'totalRad'>): boolean =>
  K95 * totalRad.u <= TOLD_WITHIN_RAD;

const LEAST_SHARP_RAD = radFromDeg(10);
/** Two angles nearer to half a turn than this may as well have gone the other way round. */
const MOST_STEP_RAD = radFromDeg(150);
/** What a file tells of it does not change a turn by more than marks do. */
const FOCAL_KNOWN = 0.1;
/** Tried where nothing is told, in standard deviations. */
const FOCALS = [-1.8, -1.2, -0.6, 0, 0.6, 1.2, 1.8];
/** Far below what honest marks give by chance: another spot of the wrench was marked. */
const ONE_LENGTH_FROM_P = 1e-5;

export function adjusterTurn(
  pictures: readonly WrenchPicture[],
  saidStill: boolean,
): Result<AdjusterTurn, AdjusterTurnFailure> {
  const inOrder = [...pictures].sort((a, b) => a.applicationsBefore - b.applicationsBefore);
  const numbers = [...new Set(inOrder.map(({ applicationsBefore }) => applicationsBefore))];
  if (numbers.length < 2) return fail({ code: 'adjuster-turn/too-few', have: numbers.length });
  const armed = inOrder.filter((picture): picture is ArmedPicture => picture.arm !== null);
  const unmarked = inOrder.length - armed.length;
  if (unmarked > 0) return fail({ code: 'adjuster-turn/no-arm', unmarked });
  const stood = saidStill && cameraStood(armed);
  const lenses = lensesOf(armed, stood);
  const { directions } = lenses.reduce((a, b) => (b.weight > a.weight ? b : a));
  const lastNumber = numbers.at(-1);
  const early = directions.find((each) => each.putOver && each.applicationsBefore !== lastNumber);
  if (early) return fail({ code: 'adjuster-turn/put-over', applicationsBefore: early.applicationsBefore });
  const dull = directions.find(({ uRad }) => !(uRad < LEAST_SHARP_RAD));
  if (dull)
    return fail({
      code: 'adjuster-turn/short',
      applicationsBefore: dull.applicationsBefore,
      uRad: Math.min(dull.uRad, Math.PI),
    });
  const sights = anglesOfSights(lenses, ANY_SIGHT);
  const pValue = chiSquareUpperTail(sights.leastChiSquare, Math.max(1, directions.length - 1));
  if (pValue < ONE_LENGTH_FROM_P) return fail({ code: 'adjuster-turn/lengths-differ', pValue });
  const far = farStep(directions, sights.all);
  if (far) return fail({ code: 'adjuster-turn/too-far', ...far });
  const putOver = directions.filter((each) => each.putOver).length;
  return ok({ ...turnOf(directions, numbers, sights.all), cameraStood: stood, putOver });
}

/** One where the focal length is known. */
function lensesOf(pictures: readonly ArmedPicture[], stood: boolean): readonly Lens[] {
  const u = pictures.reduce((most, { uLnFocal }) => Math.max(most, uLnFocal), 0);
  return (u < FOCAL_KNOWN ? [0] : FOCALS).map((off) => {
    const through = pictures.map((each) => ({ ...each, focalPx: each.focalPx * Math.exp(off * u) }));
    return { weight: Math.exp(-0.5 * off ** 2), directions: directionsSeen(through, stood) };
  });
}

function turnOf(
  directions: readonly Direction[],
  numbers: readonly number[],
  sights: readonly AnglesOfSight[],
): Omit<AdjusterTurn, 'cameraStood' | 'putOver'> {
  const members = numbers.map((number) =>
    directions.flatMap(({ applicationsBefore, putOver }, i) =>
      applicationsBefore === number && !putOver ? [i] : [],
    ),
  );
  const first = members[0] as readonly number[];
  const places = members.map((group, i) => ({
    applicationsBefore: numbers[i] as number,
    turnRad: i === 0 ? { value: 0, u: 0 } : turnBetween(first, group, sights),
  }));
  const last = places.at(-1) as (typeof places)[number];
  const applications = last.applicationsBefore - (numbers[0] as number);
  const { value, u } = last.turnRad;
  return {
    totalRad: last.turnRad,
    applications,
    perApplicationRad: { value: value / applications, u: u / applications },
    places,
    firstDirectionRad: (directions[0] as Direction).directionRad,
  };
}

function turnBetween(
  from: readonly number[],
  to: readonly number[],
  sights: readonly AnglesOfSight[],
): Uncertain {
  const turns = sights.map(({ share, anglesRad, uRad }) => {
    const mean = (group: readonly number[]) => ({
      at: group.reduce((sum, i) => sum + (anglesRad[i] as number), 0) / group.length,
      variance: group.reduce((sum, i) => sum + (uRad[i] as number) ** 2, 0) / group.length ** 2,
    });
    const [a, b] = [mean(from), mean(to)];
    return { share, turn: b.at - a.at, variance: a.variance + b.variance };
  });
  const value = turns.reduce((sum, { share, turn }) => sum + share * turn, 0);
  const variance = turns.reduce(
    (sum, each) => sum + each.share * (each.variance + (each.turn - value) ** 2),
    0,
  );
  return { value, u: Math.sqrt(variance) };
}

/** Of the sight that weighs most. */
function farStep(directions: readonly Direction[], sights: readonly AnglesOfSight[]) {
  const best = sights.reduce((a, b) => (b.share > a.share ? b : a));
  for (const [i, { applicationsBefore, putOver }] of directions.entries()) {
    if (putOver) break;
    const turnRad = i === 0 ? 0 : (best.anglesRad[i] as number) - (best.anglesRad[i - 1] as number);
    if (Math.abs(turnRad) > MOST_STEP_RAD) return { applicationsBefore, turnRad };
  }
  return null;
}
