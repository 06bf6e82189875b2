/**
 * The clevis pin's and the camshaft's ends in a picture whose tape is known.
 *
 * Model    round things in the parts of the tape's plane where either end usually is (guess-rings.ts), each fitted (round-edges.ts), on both sides
 *          of the tape; of all pairs
 *          the one with the greatest sum of how round they are, less the squares of how far they lie from what is usual over its scatter;
 *          the lead of either end: over the best pair that has another one
 * Assumes  a tape along the rod with its zero at the chamber; arms of 5 to 6 1/2 in, about square to the rod, their camshaft on either side
 * Fails    null where nothing round is there
 * Source   arms' lengths: common practice, no source; the scatter of places about the tape is of looks 0 to 15 and flat scenes 0 to 9
 *          (docs/assists.md)
 */
import type { Gray } from './gray.ts';
import { type Part, sheetOf, type TapePlane } from './guess-plane.ts';
import { ringPlaces } from './guess-rings.ts';
import { isInPicture } from './level-at.ts';
import type { Point } from './point.ts';
import { type RoundEdge, roundEdges } from './round-edges.ts';

export type RoundThing = { readonly edge: RoundEdge; readonly mm: Point; readonly roundness: number };
export type GuessedEnds = {
  readonly pin: RoundThing;
  readonly camshaft: RoundThing;
  readonly score: number;
  readonly pinLead: number;
  readonly camshaftLead: number;
};

const PIN = { part: [80, 222, -12, 48] as Part, radii: [5.5, 6.5, 8, 9.5, 11], bounds: [5, 12] } as const;
const CAMSHAFT = {
  part: [55, 250, 112, 220] as Part,
  radii: [14, 16, 18, 20, 22],
  bounds: [12, 25],
} as const;
const MOST = 8;
const REACH_MM = 3;
const LEAST_RADIUS_PX = 4.5;
/** What is usual, mm, and its scatter: pin beside the blade's edge, camshaft along the blade from the pin, and their distance. */
const USUAL = { asideMm: [17, 8], alongMm: [5, 27], armMm: [148, 14] } as const;
const PER_SQUARE = 0.06;
const OTHER_MM = 8;
const MOST_TRAVEL_MM = 75;
const LEAST_ROUND = 0.35;
const PER_VOTE = 0.25;

/** Where the ends lie by another picture. */
export type Usual = { readonly pinMm: Point; readonly camshaftMm: Point | null };

export function guessEnds(gray: Gray, plane: TapePlane, usual: Usual | null = null): GuessedEnds | null {
  const pins = roundThings(gray, plane, PIN);
  const camshafts = roundThings(gray, plane, CAMSHAFT);
  const pairs = pins
    .flatMap((pin) =>
      camshafts.map((camshaft) => ({
        pin,
        camshaft,
        score: scoreOf(pin, camshaft) - againstOther(pin, camshaft, usual),
      })),
    )
    .sort((a, b) => b.score - a.score);
  const best = pairs[0];
  if (!best) return null;
  const leadOver = (isOther: (pair: (typeof pairs)[number]) => boolean) =>
    best.score - (pairs.find(isOther)?.score ?? 0);
  return {
    ...best,
    pinLead: leadOver(({ pin }) => apart(pin, best.pin) > 5),
    camshaftLead: leadOver(({ camshaft }) => apart(camshaft, best.camshaft) > 8),
  };
}

const apart = (a: RoundThing, b: RoundThing) => Math.hypot(a.mm[0] - b.mm[0], a.mm[1] - b.mm[1]);

function scoreOf({ mm: [px, py], roundness: a }: RoundThing, { mm: [cx, cy], roundness: b }: RoundThing) {
  const off = (value: number, [usual, scatter]: readonly [number, number]) =>
    ((value - usual) / scatter) ** 2;
  const squares =
    off(py, USUAL.asideMm) + off(cx - px, USUAL.alongMm) + off(Math.hypot(cx - px, cy - py), USUAL.armMm);
  return a + b - PER_SQUARE * squares;
}

/** Another picture is taken from elsewhere: depths shift what lies before or behind the blade. */
function againstOther(pin: RoundThing, camshaft: RoundThing, usual: Usual | null): number {
  if (!usual) return 0;
  const travel = Math.max(0, Math.abs(pin.mm[0] - usual.pinMm[0]) - MOST_TRAVEL_MM);
  const squares = (travel / OTHER_MM) ** 2 + ((pin.mm[1] - usual.pinMm[1]) / OTHER_MM) ** 2;
  if (!usual.camshaftMm) return PER_SQUARE * squares;
  const [dx, dy] = [camshaft.mm[0] - usual.camshaftMm[0], camshaft.mm[1] - usual.camshaftMm[1]];
  return PER_SQUARE * (squares + (dx * dx + dy * dy) / OTHER_MM ** 2);
}

function roundThings(
  gray: Gray,
  plane: TapePlane,
  { part, radii, bounds }: typeof PIN | typeof CAMSHAFT,
): readonly RoundThing[] {
  const places = ringPlaces(sheetOf(gray, plane, part), radii, MOST);
  return places.flatMap(({ at, votes }): RoundThing[] => {
    const placePx = plane.pxFromMm([part[0] + at[0], part[2] + at[1]]);
    const radiiPx = [
      Math.max(LEAST_RADIUS_PX, bounds[0] * plane.pxPerMm),
      bounds[1] * plane.pxPerMm,
    ] as const;
    if (!isInPicture(gray, ...placePx, 1.2 * radiiPx[1])) return [];
    const edges = roundEdges(gray, { placePx, reachPx: REACH_MM * plane.pxPerMm, radiiPx });
    const edge = edges.reduce<RoundEdge | null>(
      (best, each) => (best && best.score * best.share >= each.score * each.share ? best : each),
      null,
    );
    if (!edge || edge.score * edge.share < LEAST_ROUND) return [];
    const roundness = edge.score * edge.share + PER_VOTE * Math.min(2, votes);
    return [{ edge, mm: plane.mmFromPx(edge.centre), roundness }];
  });
}
