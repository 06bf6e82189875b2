/**
 * The push rod's middle line, from both of its edges, near where face and pin were marked.
 *
 * Model    pairs of lines along the way from face to pin (rod-lines.ts), a rod's width apart by the tape beside it (rod-width.ts), whose middle
 *          passes the face's mark, none of them on the tape's blade; both fitted sharply (rod-edge-fit.ts); each pair weighed by how far
 *          both are seen, how little they scatter and how near the width is at either end. Offered: the axis between the best
 *          (cylinder-axis.ts), one mark at either end of what is seen of it
 *          sigma: what both fits leave open, half of what near rivals differ by, and a floor: shade, rust and a shadow's edge beside the
 *          true one shift an edge by some part of the width
 * Assumes  a rod that is round and straight
 * Fails    'rod/loose-scale' where the tape does not tell the width, 'rod/no-edges' where no such pair is seen, 'rod/one-edge' where one of
 *          them is seen too little, 'rod/two-ways' where another pair is seen nearly as well
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { AssistQuestion, AssistSight, FailureOf } from './assist-sight.ts';
import { type Frame, placeIn } from './assist-tape-edge.ts';
import { cylinderAxis, type LineEquation, type PictureLine } from './cylinder-axis.ts';
import type { Gray } from './gray.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { type EdgeFit, edgeFit } from './rod-edge-fit.ts';
import { type Line, type Pair, placeOn, type Run, rodPairs } from './rod-lines.ts';
import { type RodStrip, rodStrip } from './rod-strip.ts';
import { type RodWidth, rodWidth } from './rod-width.ts';
import { type Lens, usualLens } from './usual-lens.ts';

type RodQuestion = Extract<AssistQuestion, { readonly of: 'rod-line' }>;
type Rod = { readonly low: EdgeFit; readonly high: EdgeFit; readonly run: Run; readonly score: number };

/** Over the length from face to pin: where the rod may be seen; the clevis begins at 0.4 of it released, later applied. */
const [FROM, TO, PIECES] = [0.05, 0.61, 28];
/** To either side: where edges, and what might be taken for one, may be. */
const ROOM = 0.17;
const MOST_U_WIDTH = 0.045;
/** Of the width at either end. */
const MOST_SIGMAS = 2.5;
/** How far the middle may pass the face's mark: so many of its sigmas, and part of the half width, by eye. */
const [ASIDE_SIGMAS, ASIDE_HALVES] = [2.5, 0.25];
const LEAST_PIECES = 10;
/** A rod is seen from the face on, but for what covers it there. */
const LATEST_FIRST = 10;
/** Below it, and with an edge seen so little or scattering so far, wrong ones begin. */
const LEAST_SCORE = 1.2;
const LEAST_SEEN = 0.6;
const MOST_SPREAD_PX = 0.6;
const USUAL_SPREAD_PX = 0.5;
/** Of the best one's score: pairs above it are taken for rivals. Apart by more, over the half width, they leave the middle open. */
const RIVAL = 0.5;
const MOST_APART = 0.06;
/** Of sigma: over the half width, and in pixels. */
const [FLOOR_HALVES, FLOOR_PX] = [0.022, 0.15];
/** From a graduation's mark to the edge of the blade that lies towards the rod. */
const BLADE_EDGE_HALVES = 0.5;

export function findRod(
  gray: Gray,
  { facePx, pinPx, faceSigmaPx, tape }: Omit<RodQuestion, 'of'>,
): Result<AssistSight, FailureOf<'rod'>> {
  const lengthPx = apart(facePx, pinPx);
  const [dx, dy] = minus(pinPx, facePx);
  const along: Point = [dx / lengthPx, dy / lengthPx];
  const frame: Frame = { origin: facePx, along, across: [-along[1], along[0]] };
  const lens = usualLens(gray);
  const [fromPx, toPx] = [FROM * lengthPx, TO * lengthPx];
  const place = (s: number) => ({ s, placePx: placeIn(frame, s, 0) });
  const width = rodWidth(tape, lens, [place(fromPx), place(toPx)]);
  if (!width || width.u > MOST_U_WIDTH) return fail({ code: 'rod/loose-scale', u: width?.u ?? 1 });
  const strip = rodStrip(gray, frame, {
    fromPx,
    toPx,
    count: PIECES,
    roomPx: Math.ceil(ROOM * lengthPx + 6),
  });
  const halfPx = width.halfAt((fromPx + toPx) / 2);
  const pairs = rodPairs(strip, width, {
    mostAsidePx: ASIDE_SIGMAS * faceSigmaPx + ASIDE_HALVES * halfPx,
    mostOff: MOST_SIGMAS * width.u,
    isOther: bladeIn(strip, tape, halfPx),
  });
  const best = surest(strip, weighed(strip, pairs, width), halfPx);
  return best.ok ? ok({ marks: marksOf(best.value, frame, lens, halfPx) }) : best;
}

type SureRod = Rod & { readonly ends: readonly [number, number]; readonly apartPx: number };

function surest(
  { pieces }: RodStrip,
  rods: readonly Rod[],
  halfPx: number,
): Result<SureRod, FailureOf<'rod'>> {
  const [best, ...others] = rods;
  if (!best || best.run.first > LATEST_FIRST) return fail({ code: 'rod/no-edges' });
  const { low, high, run, score } = best;
  const seen = Math.min(low.seen, high.seen);
  if (score < LEAST_SCORE || seen < LEAST_SEEN || Math.max(low.spreadPx, high.spreadPx) > MOST_SPREAD_PX)
    return fail({ code: 'rod/one-edge', seen });
  const ends = [pieces[run.first]?.s ?? 0, pieces[run.last]?.s ?? 0] as const;
  const rivals = others.filter((other) => other.score > RIVAL * score);
  const middleAt = (rod: Rod, s: number) => (placeOn(rod.low.line, s) + placeOn(rod.high.line, s)) / 2;
  const apartPx = Math.max(
    0,
    ...rivals.flatMap((rival) => ends.map((s) => Math.abs(middleAt(best, s) - middleAt(rival, s)))),
  );
  if (apartPx > MOST_APART * halfPx) return fail({ code: 'rod/two-ways', apartPx });
  return ok({ ...best, ends, apartPx });
}

function marksOf({ low, high, ends, apartPx }: SureRod, frame: Frame, lens: Lens, halfPx: number) {
  const onPicture = ({ line }: EdgeFit): PictureLine => [
    placeIn(frame, ends[0], placeOn(line, ends[0])),
    placeIn(frame, ends[1], placeOn(line, ends[1])),
  ];
  const axis = cylinderAxis([onPicture(low), onPicture(high)], lens);
  return ends.map((s) => ({
    placePx: crossing(axis, frame, s),
    sigmaPx: Math.hypot(
      Math.sqrt(low.varianceAt(s) + high.varianceAt(s)) / 2,
      apartPx / 2,
      FLOOR_HALVES * halfPx,
      FLOOR_PX,
    ),
    readingMm: null,
  }));
}

/** Where the line across at s meets a line of the picture. */
function crossing([a, b, c]: LineEquation, frame: Frame, s: number): Point {
  const [x, y] = placeIn(frame, s, 0);
  return placeIn(frame, s, -(a * x + b * y + c) / dot([a, b], frame.across));
}

/** Best first. */
function weighed(strip: RodStrip, pairs: readonly Pair[], width: RodWidth): readonly Rod[] {
  return pairs
    .filter(
      ({ run: { first, last, score } }) =>
        last - first + 1 >= LEAST_PIECES && score > RIVAL * (pairs[0]?.run.score ?? 0),
    )
    .flatMap(({ low: nearLow, high: nearHigh, run }): Rod[] => {
      const low = edgeFit(strip, nearLow, run);
      const high = edgeFit(strip, nearHigh, run);
      if (!low || !high) return [];
      const offs = [run.first, run.last].map((i) => {
        const s = strip.pieces[i]?.s ?? 0;
        const halfPx = width.halfAt(s);
        const off = (placeOn(high.line, s) - placeOn(low.line, s)) / 2 - halfPx;
        return off / Math.hypot(width.u * halfPx, Math.sqrt(low.varianceAt(s) + high.varianceAt(s)) / 2);
      });
      const most = Math.max(...offs.map(Math.abs));
      if (most > MOST_SIGMAS) return [];
      const sharp = (spreadPx: number) => 1 / (1 + (spreadPx / USUAL_SPREAD_PX) ** 2);
      const score =
        run.score *
        Math.min(low.seen, high.seen) *
        sharp(low.spreadPx) *
        sharp(high.spreadPx) *
        Math.exp(-(most ** 2) / 2);
      return [{ low, high, run, score }];
    })
    .sort((a, b) => b.score - a.score);
}

/** Whether a line lies on the tape's blade or on its edge. */
function bladeIn({ frame, pieces }: RodStrip, tape: RodQuestion['tape'], halfPx: number) {
  const inFrame = (point: Point): Point => [
    dot(minus(point, frame.origin), frame.along),
    dot(minus(point, frame.origin), frame.across),
  ];
  const sorted = tape.toSorted((a, b) => a.readingMm - b.readingMm);
  const [[s0, t0], [s1, t1]] = [sorted[0], sorted.at(-1)].map((end) =>
    inFrame(end?.placePx ?? frame.origin),
  ) as [Point, Point];
  const slope = (t1 - t0) / (s1 - s0);
  const blade: Line = { at: t0 - slope * s0, slope };
  const side = Math.sign(placeOn(blade, pieces[0]?.s ?? 0));
  return (line: Line, { first, last }: Run) =>
    [first, last].some((i) => {
      const s = pieces[i]?.s ?? 0;
      return (placeOn(line, s) - placeOn(blade, s)) * side > -BLADE_EDGE_HALVES * halfPx;
    });
}
