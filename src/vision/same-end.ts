/**
 * The end of pin or camshaft that is marked in one picture, found again in another: the same point of the metal, whatever point that is.
 *
 * Model    the look about the mark without slow shading, within circles of three sizes, fitted in the other picture with turn, shape and
 *          light free (follow-fit.ts), from starts about the rough mark; the sizes' median place; its uncertainty joins what the fits
 *          state, how far the sizes are apart, and a floor
 * Assumes  both pictures taken from about one side, in about one light; roughly known how the part is turned and how much larger it is
 * Fails    with the reason: nothing of that look near the rough mark, or sizes that contradict each other
 */
import { assert, fail, ok, type Result } from '../basics/result.ts';
import type { EndMarks, FailureOf } from './assist-sight.ts';
import { median } from './biweight.ts';
import type { PatchMap } from './fit-patch.ts';
import type { FollowFit } from './follow-fit.ts';
import type { Gray } from './gray.ts';
import { apart, type Point } from './point.ts';
import { patchFits } from './sought-patch.ts';

export type SameEndQuestion = {
  readonly of: 'clevis-pin' | 'camshaft-end';
  /** In the picture whose mark is kept, and in that in which the end is sought near its mark. */
  readonly known: EndMarks;
  readonly rough: EndMarks;
  readonly roughSigmaPx: number;
};

/** sigmaPx: of the second place against the first, for the same point of the metal; what the first is off by is not in it. */
export type SameEnd = { readonly placePx: Point; readonly sigmaPx: number };

/** Radii over the length from face to pin; weights fall to nothing at the rim, so that about half of it counts. */
const RADII = { 'clevis-pin': [0.05, 0.065, 0.085], 'camshaft-end': [0.11, 0.15, 0.2] } as const;
const LEAST_RADIUS_PX = 7;
/** Over the radius: what is shading and what is look. The second where the first leaves little but noise. */
const SHADING = [0.3, 0.9] as const;
const LEAST_FOUND = 2;
const LEAST_LIKENESS = 0.8;
const LEAST_SHARE = 0.6;
const MOST_APART_PX = 0.7;
/** Of the rough mark's: how far off it may be. */
const REACH_SIGMAS = 3;
const MOST_STEPS = 4;
/** Over the radius: from how far off a fit finds its place. */
const BASIN = 0.3;
/** Of faces that are not flat, of bores, and of gleams: measured, docs/assists.md. */
const FLOOR_PX = { 'clevis-pin': 0.14, 'camshaft-end': 0.22 } as const;

/** How far the part may have turned beyond what rod or arm say: the pin lies loose in its eyes, the camshaft is splined to the arm. */
export const UNFORESEEN_TURN_RAD = { 'clevis-pin': 0.2, 'camshaft-end': 0.03 } as const;

/** What the marks of both pictures say. */
type Sought = {
  readonly knownPx: Point;
  readonly roughPx: Point;
  readonly roughSigmaPx: number;
  readonly timesLarger: number;
  readonly steps: PatchMap['steps'];
};

export function sameEnd(
  known: Gray,
  other: Gray,
  question: SameEndQuestion,
): Result<SameEnd, FailureOf<'same'>> {
  const { of, roughSigmaPx } = question;
  const [knownPx, roughPx] = [markOf(question.known, of), markOf(question.rough, of)];
  assert(knownPx && roughPx, 'The end is marked in both pictures');
  const timesLarger = stillPx(question.rough) / stillPx(question.known);
  const steps = endSteps(question.known, question.rough, of);
  const sought = { knownPx, roughPx, roughSigmaPx, timesLarger, steps };
  const lengthPx = apart(question.known.facePx, question.known.pinPx);
  const tried = RADII[of].flatMap((part) => {
    const radiusPx = Math.max(LEAST_RADIUS_PX, part * lengthPx);
    const [fine, broad] = SHADING.map((shading) => shading * radiusPx) as [number, number];
    const first = foundAgain(known, other, sought, [radiusPx, fine]);
    if (first && first.likeness > LEAST_LIKENESS) return first;
    return foundAgain(known, other, sought, [radiusPx, broad]) ?? first ?? [];
  });
  const found = tried.filter(({ likeness }) => likeness > LEAST_LIKENESS);
  const likeness = Math.max(0, ...tried.map((each) => each.likeness));
  if (found.length < LEAST_FOUND) return fail({ code: 'same/unlike', likeness });
  const placePx: Point = [
    median(found.map(({ place }) => place[0])),
    median(found.map(({ place }) => place[1])),
  ];
  const apartPx = Math.max(...found.map(({ place }) => apart(place, placePx)));
  if (apartPx > MOST_APART_PX) return fail({ code: 'same/two-ways', apartPx });
  const stated = median(found.map(({ sigmaPx }) => sigmaPx));
  return ok({ placePx, sigmaPx: Math.hypot(stated, apartPx, FLOOR_PX[of]) });
}

const markOf = ({ pinPx, camshaftPx }: EndMarks, of: SameEndQuestion['of']): Point | null =>
  of === 'clevis-pin' ? pinPx : camshaftPx;

/** Between marks that no stroke moves; where the camshaft is not marked, both pictures count as taken from equally far. */
const stillPx = ({ facePx, camshaftPx }: EndMarks): number => (camshaftPx ? apart(facePx, camshaftPx) : 1);

/** The pin turns with the rod, the camshaft with the arm. */
function turnedRad({ facePx, pinPx, camshaftPx }: EndMarks, of: SameEndQuestion['of']): number {
  const from = of === 'clevis-pin' ? facePx : (camshaftPx ?? facePx);
  return Math.atan2(pinPx[1] - from[1], pinPx[0] - from[0]);
}

/** How the other picture shows what is about the end, as far as the marks tell. */
export function endSteps(known: EndMarks, other: EndMarks, of: SameEndQuestion['of']): PatchMap['steps'] {
  const turnRad = turnedRad(other, of) - turnedRad(known, of);
  const timesLarger = stillPx(other) / stillPx(known);
  const [c, s] = [timesLarger * Math.cos(turnRad), timesLarger * Math.sin(turnRad)];
  return [c, -s, s, c];
}

function foundAgain(
  known: Gray,
  other: Gray,
  { knownPx, roughPx, roughSigmaPx, timesLarger, steps }: Sought,
  [radiusPx, shadingPx]: readonly [number, number],
): FollowFit | null {
  const off = 1 + REACH_SIGMAS * roughSigmaPx;
  const within = { placePx: roughPx, reachPx: 2.5 * radiusPx * timesLarger + off };
  const starts = startsAbout(roughPx, REACH_SIGMAS * roughSigmaPx, BASIN * radiusPx);
  const sought = { placePx: knownPx, radiusPx, shadingPx };
  const fits = patchFits(known, other, sought, within, starts, steps);
  return fits.find(({ place, share }) => share > LEAST_SHARE && apart(place, roughPx) < off) ?? null;
}

/** Places within a circle, so close that a fit from one of them finds what lies in it. */
function startsAbout([x, y]: Point, reachPx: number, stepPx: number): readonly Point[] {
  const n = Math.min(MOST_STEPS, Math.ceil(reachPx / stepPx - 0.5));
  const step = n > 0 ? reachPx / n : 0;
  const starts: Point[] = [];
  for (let i = -n; i <= n; i++)
    for (let j = -n; j <= n; j++) if (Math.hypot(i, j) < n + 0.3) starts.push([x + i * step, y + j * step]);
  return starts;
}
