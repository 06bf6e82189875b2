/**
 * Spots of the arm in one picture, found in another one in which the arm has turned.
 *
 * Model    between both the pin goes by a chord; the arm turns about a point on the chord's perpendicular bisector, an arm's length from the
 *          pin, to one side or the other. Spots about that line, mapped by the plane of the arm, are sought where turns of four
 *          lengths of arm would bring them, each fitted for itself (follow-fit.ts); of the four the one that looks most alike
 * Assumes  plane of the arm in mm, the same in both pictures
 * Fails    a spot without a look of its own, or that is found nowhere, is left out
 */
import type { ArmView } from './assist-sight.ts';
import { inverseSteps, type PatchMap, sizeOf } from './fit-patch.ts';
import { type FollowFit, fitFollowed } from './follow-fit.ts';
import { patchOf } from './follow-patch.ts';
import { roomFor } from './follow-residuals.ts';
import type { Gray } from './gray.ts';
import { type Homography, inverseOf, mapped } from './homography.ts';
import { lengthOf, minus, type Point, plus } from './point.ts';

export type ArmPicture = { readonly gray: Gray; readonly view: ArmView };
/** In mm of the plane. */
export type ArmSpot = { readonly from: Point; readonly to: Point };

/** Slack adjusters of 5 to 6 1/2 in, and a little to each side. */
const ARMS_MM = [118, 132, 148, 166];
const ALONG_MM = { from: 18, to: 150, step: 6 };
/** An arm is up to 40 mm wide. */
const BESIDE_MM = [-14, -7, 0, 7, 14];
const RADIUS_MM = 4.5;
const LEAST_RADIUS_PX = 8;
const LEAST_LIKENESS = 0.75;
const LEAST_SHARE = 0.5;
const MOST_SIGMA_PX = 0.7;

/** side: of the chord, 1 or -1: the turn's sign. */
export function armSpots(here: ArmPicture, there: ArmPicture, side: 1 | -1): readonly ArmSpot[] {
  const { pinMm } = here.view;
  const chord = minus(there.view.pinMm, pinMm);
  const lengthMm = lengthOf(...chord);
  const u: Point = [chord[0] / lengthMm, chord[1] / lengthMm];
  const n: Point = [-side * u[1], side * u[0]];
  const middle = plus(pinMm, [chord[0] / 2, chord[1] / 2]);
  const place = (along: number, beside: number): Point => [
    middle[0] + along * n[0] + beside * u[0],
    middle[1] + along * n[1] + beside * u[1],
  ];
  const turns = ARMS_MM.filter((armMm) => armMm > lengthMm).map((armMm) => ({
    about: place(Math.sqrt(armMm ** 2 - lengthMm ** 2 / 4), 0),
    turnRad: side * 2 * Math.asin(lengthMm / 2 / armMm),
  }));
  const spots: ArmSpot[] = [];
  for (let along = ALONG_MM.from; along <= ALONG_MM.to; along += ALONG_MM.step)
    for (const beside of BESIDE_MM) {
      const from = place(along, beside);
      const to = spotIn(here, there, from, turns);
      if (to) spots.push({ from, to });
    }
  return spots;
}

type Turn = { readonly about: Point; readonly turnRad: number };

export function turnedBy({ about, turnRad }: Turn, from: Point): Point {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const [x, y] = minus(from, about);
  return [about[0] + c * x - s * y, about[1] + s * x + c * y];
}

function spotIn(here: ArmPicture, there: ArmPicture, from: Point, turns: readonly Turn[]): Point | null {
  const stepsHere = stepsAt(here.view.armPx, from);
  const radiusPx = Math.max(LEAST_RADIUS_PX, Math.round(RADIUS_MM * pxPerMmAt(here.view.armPx, from)));
  const patch = patchOf(here.gray, mapped(here.view.armPx, from), radiusPx, 1, 'few');
  if (!patch) return null;
  const room = roomFor(patch);
  let best: FollowFit | null = null;
  for (const turn of turns) {
    const to = turnedBy(turn, from);
    const [c, s] = [Math.cos(turn.turnRad), Math.sin(turn.turnRad)];
    const steps = times(times(stepsAt(there.view.armPx, to), [c, -s, s, c]), inverseSteps(stepsHere));
    const fit = fitFollowed(patch, there.gray, { place: mapped(there.view.armPx, to), steps }, room);
    const isLike =
      fit && fit.likeness > LEAST_LIKENESS && fit.share > LEAST_SHARE && fit.sigmaPx < MOST_SIGMA_PX;
    if (isLike && !(best && best.likeness >= fit.likeness)) best = fit;
  }
  return best && mapped(inverseOf(there.view.armPx), best.place);
}

type Steps = PatchMap['steps'];

/** How a step in the plane appears in the picture. */
function stepsAt(h: Homography, [u, v]: Point): Steps {
  const w = h[6] * u + h[7] * v + h[8];
  const [x, y] = mapped(h, [u, v]);
  return [(h[0] - x * h[6]) / w, (h[1] - x * h[7]) / w, (h[3] - y * h[6]) / w, (h[4] - y * h[7]) / w];
}

export const pxPerMmAt = (h: Homography, place: Point): number =>
  Math.sqrt(Math.abs(sizeOf(stepsAt(h, place))));

const times = (a: Steps, b: Steps): Steps => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
];
