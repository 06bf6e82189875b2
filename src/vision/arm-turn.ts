/**
 * Where the camshaft's end is seen, told by how the arm turns about it between two pictures: nobody need mark it.
 *
 * Model    x' = R(turn) x + b over spots of the arm (arm-spots.ts), in mm of its plane; the turn that most spots agree with, drawn from pairs of
 *          them, then least squares over these; its fixed point c = (I - R)^-1 b is the camshaft's axis, and the end is seen where
 *          a plane so much nearer to the camera has it. The pin, which is no such spot, tells the same turn by its chord: c = middle +
 *          n |chord| / (2 tan(turn / 2)). sigma^2 = (half of what both differ by)^2 + (what the end's depth moves it by)^2 + a floor^2
 * Assumes  the arm stiff; poses as adjusted
 * Fails    'arm/unseen' where too few spots agree, 'arm/two-ways' where they do on both sides of the rod, 'arm/no-turn' where it is no arm's turn
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { type ArmPicture, type ArmSpot, armSpots, pxPerMmAt, turnedBy } from './arm-spots.ts';
import type { ArmView, AssistSight, FailureOf } from './assist-sight.ts';
import type { Gray } from './gray.ts';
import { mapped } from './homography.ts';
import { apart, dot, lengthOf, minus, type Point } from './point.ts';

const LEAST_SPOTS = 10;
/** Of the spots of a side: others are of the chamber, the hose or the ground, which happen to be alike. */
const LEAST_SHARE = 0.4;
const CLEARLY = 2;
const AGREES_MM = 1;
const LEAST_APART_MM = 20;
/** Lengths of two spots' distance in both pictures. */
const MOST_STRETCH = 0.06;
const LEAST_TURN_RAD = 0.08;
const ARM_MM = { least: 115, most: 180 };
/** Both ways to tell the axis. */
const MOST_DIFFERENT_MM = 10;
/** Standard uncertainty of the end's depth, mm (priors.ts), over the depth between both planes. */
const DEPTH_SHARE = 12 / 16;
const FLOOR_MM = 2;

type Turn = { readonly turnRad: number; readonly about: Point; readonly spots: number; readonly of: number };

/** Of the end in the first picture. */
export function armTurn(
  here: Gray,
  there: Gray,
  views: { readonly here: ArmView; readonly there: ArmView },
): Result<AssistSight, FailureOf<'arm'>> {
  const pictures = [
    { gray: here, view: views.here },
    { gray: there, view: views.there },
  ] as const;
  const [one, other] = [turnOf(...pictures, 1), turnOf(...pictures, -1)];
  const [best, second] = one.spots >= other.spots ? [one, other] : [other, one];
  if (best.spots < LEAST_SPOTS || best.spots < LEAST_SHARE * best.of)
    return fail({ code: 'arm/unseen', spots: best.spots });
  if (second.spots * CLEARLY > best.spots) return fail({ code: 'arm/two-ways', spots: second.spots });
  return endOf(best, views);
}

function endOf(
  { turnRad, about }: Turn,
  { here, there }: { readonly here: ArmView; readonly there: ArmView },
): Result<AssistSight, FailureOf<'arm'>> {
  const armMm = apart(about, here.pinMm);
  const differentMm = apart(about, byChord(here.pinMm, there.pinMm, turnRad));
  if (!(armMm > ARM_MM.least && armMm < ARM_MM.most && differentMm < MOST_DIFFERENT_MM))
    return fail({ code: 'arm/no-turn', armMm });
  const placePx = mapped(here.endPx, about);
  const depthPx = DEPTH_SHARE * apart(placePx, mapped(here.armPx, about));
  const pxPerMm = pxPerMmAt(here.armPx, about);
  const sigmaPx = Math.hypot((pxPerMm * differentMm) / 2, depthPx, pxPerMm * FLOOR_MM);
  return ok({ marks: [{ placePx, sigmaPx, readingMm: null }] });
}

function byChord(from: Point, to: Point, turnRad: number): Point {
  const chord = minus(to, from);
  const off = 1 / (2 * Math.tan(turnRad / 2));
  return [from[0] + chord[0] / 2 - off * chord[1], from[1] + chord[1] / 2 + off * chord[0]];
}

/** The one that most agree with. */
function turnOf(here: ArmPicture, there: ArmPicture, side: 1 | -1): Turn {
  const spots = armSpots(here, there, side);
  let most: readonly ArmSpot[] = [];
  for (const a of spots)
    for (const b of spots) {
      const turn = a === b ? null : throughTwo(a, b, side);
      if (!turn) continue;
      const agreeing = spots.filter(({ from, to }) => apart(turned(turn, from), to) < AGREES_MM);
      if (agreeing.length > most.length) most = agreeing;
    }
  const turn = rigid(most);
  return { ...turn, spots: most.length, of: spots.length };
}

/** to = R (from - a) + b. */
type Rigid = { readonly turnRad: number; readonly a: Point; readonly b: Point };

const turned = ({ turnRad, a, b }: Rigid, from: Point): Point => {
  const [x, y] = turnedBy({ about: a, turnRad }, from);
  return [x + b[0] - a[0], y + b[1] - a[1]];
};

function throughTwo(one: ArmSpot, other: ArmSpot, side: 1 | -1): Rigid | null {
  const [x, y] = [minus(other.from, one.from), minus(other.to, one.to)];
  const [from, to] = [lengthOf(...x), lengthOf(...y)];
  if (from < LEAST_APART_MM || Math.abs(from / to - 1) > MOST_STRETCH) return null;
  const turnRad = Math.atan2(x[0] * y[1] - x[1] * y[0], dot(x, y));
  return turnRad * side < LEAST_TURN_RAD ? null : { turnRad, a: one.from, b: one.to };
}

function rigid(spots: readonly ArmSpot[]): { readonly turnRad: number; readonly about: Point } {
  const [a, b] = [meanOf(spots.map(({ from }) => from)), meanOf(spots.map(({ to }) => to))];
  let [along, across] = [0, 0];
  for (const { from, to } of spots) {
    const [x, y] = [minus(from, a), minus(to, b)];
    along += dot(x, y);
    across += x[0] * y[1] - x[1] * y[0];
  }
  const turnRad = Math.atan2(across, along);
  // The fixed point, by the chord that the mean place goes.
  return { turnRad, about: byChord(a, b, turnRad) };
}

function meanOf(places: readonly Point[]): Point {
  const sum = places.reduce<Point>((all, place) => [all[0] + place[0], all[1] + place[1]], [0, 0]);
  return [sum[0] / places.length, sum[1] / places.length];
}
