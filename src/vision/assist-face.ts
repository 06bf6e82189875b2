/**
 * Edges across the push rod near where a hand marked the chamber face, each by its point on the rod's middle line.
 *
 * Model    whatever of the chamber the rod comes out of, face, seal plate or boss, ends it in an arc: a plane square to a round rod
 *          (face-arc.ts). How round that is seen, the rod's slant tells (rod-slant.ts), which leaves out most shadows and hoses. A ring of
 *          rust or the end of a paint band is as round: a person says which is meant. What face marks of both pictures have in common
 *          a stroke does not show, so that any edge of the chamber will do, if it is the same one
 *          sigma: along the rod the fit's scatter, and a floor; across what the middle line leaves open
 * Assumes  a rod that is round and square to what it comes out of
 * Fails    'face/loose-scale' where the tape does not tell width and slant, 'face/no-edge' where no such arc is seen within the hand's
 *          reach, or the rod is seen too nearly square, 'face/no-surer' where none is surer than the hand
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { AssistQuestion, AssistSight, FailureOf, FoundMark } from './assist-sight.ts';
import { type Frame, placeIn } from './assist-tape-edge.ts';
import { type ArcFit, arcAt, arcFit, seenArcs } from './face-arc.ts';
import { faceRows } from './face-rows.ts';
import type { Gray } from './gray.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { arcOfRod } from './rod-slant.ts';
import { rodWidth } from './rod-width.ts';
import { usualLens } from './usual-lens.ts';

type FaceQuestion = Extract<AssistQuestion, { readonly of: 'chamber-face' }>;

/** How far an edge may be from the hand's mark; the most over the half width. */
const [REACH_SIGMAS, REACH_PX, MOST_REACH] = [3, 1, 0.5];
const [BEYOND_PX, ROOM_PX] = [4, 6];
/** Over the half width: seen more nearly square, the face hides its edge. */
const LEAST_ROUND = 0.05;
/** How well the slant tells how round, and how far off it may be: over the half width, and in pixels. */
const [U_ROUND, U_ROUND_PX] = [0.04, 0.3];
const [OFF_ROUND, OFF_ROUND_PX] = [0.1, 1];
/** Levels. */
const LEAST_STEP = 8;
const MOST_SPREAD_PX = 0.5;
const LEAST_SEEN = 0.65;
/** Over the half width: a rod swivels by some degrees. */
const MOST_TILT = 0.15;
/** Of two so near the clearer one is shown. */
const APART_PX = 2;
const MOST_SHOWN = 3;
/** Of sigma: over the half width, and in pixels. */
const [FLOOR_HALVES, FLOOR_PX] = [0.01, 0.3];
/** Over the half width: where an edge is drawn. */
const DRAWN = [-0.95, -0.8, -0.6, -0.4, -0.2, 0, 0.2, 0.4, 0.6, 0.8, 0.95];

/** From the chamber outwards. */
export function findFace(
  gray: Gray,
  { facePx, sigmaPx, rod: [near, far], tape }: Omit<FaceQuestion, 'of'>,
): Result<AssistSight, FailureOf<'face'>> {
  const lens = usualLens(gray);
  const long = apart(near.placePx, far.placePx);
  const [dx, dy] = minus(far.placePx, near.placePx);
  const along: Point = [dx / long, dy / long];
  const before = dot(minus(facePx, near.placePx), along);
  const origin: Point = [near.placePx[0] + before * along[0], near.placePx[1] + before * along[1]];
  const frame: Frame = { origin, along, across: [-along[1], along[0]] };
  const width = rodWidth(tape, lens, [
    { s: 0, placePx: origin },
    { s: long - before, placePx: far.placePx },
  ]);
  const round = arcOfRod(tape, [origin, far.placePx], lens);
  if (!width || round === null) return fail({ code: 'face/loose-scale' });
  const halfPx = width.halfAt(0);
  const reachPx = Math.ceil(Math.min(MOST_REACH * halfPx, REACH_SIGMAS * sigmaPx + REACH_PX));
  const arcs = round < LEAST_ROUND ? [] : arcsNear(gray, frame, halfPx, round * halfPx, reachPx);
  if (arcs.length === 0) return fail({ code: 'face/no-edge' });
  const acrossPx = Math.hypot((1 - before / long) * near.sigmaPx, (before / long) * far.sigmaPx);
  const marks = arcs
    .map(
      (arc): FoundMark => ({
        placePx: placeIn(frame, arc.s, 0),
        sigmaPx: Math.max(acrossPx, Math.hypot(arc.sigmaPx, FLOOR_HALVES * halfPx, FLOOR_PX)),
        readingMm: null,
        edgePx: DRAWN.map((u) => placeIn(frame, arcAt(arc, u), u * halfPx)),
      }),
    )
    .filter((mark) => mark.sigmaPx < sigmaPx);
  return marks.length > 0 ? ok({ marks }) : fail({ code: 'face/no-surer' });
}

function arcsNear(gray: Gray, frame: Frame, halfPx: number, kPx: number, reachPx: number): readonly ArcFit[] {
  const farPx = reachPx + BEYOND_PX;
  const rows = faceRows(gray, frame, halfPx, farPx + Math.ceil(halfPx) + ROOM_PX);
  const isArc = ({ s, k, t, seen, spreadPx }: ArcFit) =>
    Math.abs(s) <= reachPx &&
    seen >= LEAST_SEEN &&
    spreadPx <= MOST_SPREAD_PX &&
    Math.abs(t) <= MOST_TILT * halfPx &&
    Math.abs(k - kPx) <= OFF_ROUND * halfPx + OFF_ROUND_PX;
  return seenArcs(rows, kPx, halfPx, farPx)
    .filter(({ step }) => step >= LEAST_STEP)
    .flatMap((seen) => arcFit(rows, seen, { kPx, uPx: U_ROUND * halfPx + U_ROUND_PX }) ?? [])
    .filter(isArc)
    .filter(({ s }, i, all) => all.slice(0, i).every((clearer) => Math.abs(clearer.s - s) > APART_PX))
    .slice(0, MOST_SHOWN)
    .sort((a, b) => a.s - b.s);
}
