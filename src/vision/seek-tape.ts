/**
 * A tape anywhere in a picture in which nothing is marked: its strokes, without readings.
 *
 * Model    beside long straight edges of a small picture (long-edges.ts), on either side, the comb of dark strokes that stands out most; where
 *          it does so clearly, the line is asked as if a rod lay along it (find-tape.ts), which takes nothing but strokes of inches, halves and
 *          quarters. A comb's step may be an inch or a half
 * Assumes  a straight blade of inches, six of them in sight
 * Fails    null where none of the likeliest lines is such a tape
 */
import type { FoundMark } from './assist-sight.ts';
import { type Frame, levelIn, placeIn } from './assist-tape-edge.ts';
import { darkTeeth, toothAt } from './dark-teeth.ts';
import { findTape } from './find-tape.ts';
import type { Gray } from './gray.ts';
import { isInPicture } from './level-at.ts';
import { type LongEdge, longEdges } from './long-edges.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { shrunk } from './shrunk.ts';

/** Of the small picture, as all that follow. */
const SMALL_PX = 1000;
const LEAST_EDGE_PX = 90;
const ASIDES_PX = [4, 8, 12, 17];
const ROWS_PX = [-1.5, 0, 1.5];
const BESIDE_PX = 2;
const STEPS_PX = [11, 64] as const;
const GROWTH = 1.04;
/** Of the step, from one to the next. */
const BOWS = [-0.02, 0, 0.02];
const LEAST_TEETH = 5;
/** What a tooth of no meaning has over the place halfway, at times. */
const USUAL = 0.3;
const LEAST_SCORE = 1;
/** Levels of 255: a tape's strokes are mostly darker than their blade by this; gravel and rust hardly are. */
const CLEAR = 15;
/** An edge beyond what is seen of it: over its length. */
const BEYOND = 0.3;
const MOST_ASKED = 2;
/** The rod is taken to be so many steps long: then an inch may be one of them, or two. */
const ROD_STEPS = 7.5;

type Comb = { readonly from: number; readonly stepPx: number; readonly score: number };
type Row = { readonly from: Point; readonly along: Point; readonly stepPx: number; readonly score: number };

/** Readings count from a start of no meaning, either way. */
export function seekTape(gray: Gray): readonly FoundMark[] | null {
  for (const { from, along, stepPx } of likeliestRows(gray)) {
    const rodPx = ROD_STEPS * stepPx;
    const pinPx: Point = [from[0] + rodPx * along[0], from[1] + rodPx * along[1]];
    const found = findTape(gray, { of: 'tape-strokes', facePx: from, pinPx });
    if (found.ok) return found.value.marks;
  }
  return null;
}

function likeliestRows(gray: Gray): readonly Row[] {
  const { gray: small, by } = shrunk(gray, SMALL_PX);
  const rows = longEdges(small, LEAST_EDGE_PX).flatMap((edge) =>
    [1, -1].flatMap((side) =>
      ASIDES_PX.flatMap((aside): Row[] => {
        const { frame, lengthPx } = besideEdge(edge, side * aside);
        const comb = combOn(small, frame, lengthPx);
        if (!comb) return [];
        const [x, y] = placeIn(frame, comb.from, 0);
        return [{ ...comb, from: [by * x, by * y], along: frame.along, stepPx: by * comb.stepPx }];
      }),
    ),
  );
  rows.sort((a, b) => b.score - a.score);
  const kept: Row[] = [];
  for (const row of rows) {
    if (kept.length >= MOST_ASKED) break;
    if (kept.every((other) => isElsewhere(row, other))) kept.push(row);
  }
  return kept;
}

function isElsewhere(a: Row, b: Row): boolean {
  const offPx = Math.abs(dot(minus(a.from, b.from), [-b.along[1], b.along[0]]));
  return Math.abs(dot(a.along, b.along)) < 0.98 || offPx > 0.5 * b.stepPx;
}

function besideEdge({ from, to, inward }: LongEdge, aside: number) {
  const lengthPx = apart(from, to);
  const along: Point = [(to[0] - from[0]) / lengthPx, (to[1] - from[1]) / lengthPx];
  const origin: Point = [from[0] + aside * inward[0], from[1] + aside * inward[1]];
  return { frame: { origin, along, across: inward }, lengthPx };
}

function combOn(gray: Gray, frame: Frame, lengthPx: number): Comb | null {
  const isIn = (s: number) => isInPicture(gray, ...placeIn(frame, s, 0), 2);
  let [begin, end] = [Math.round(-BEYOND * lengthPx), Math.round((1 + BEYOND) * lengthPx)];
  while (begin < end && !isIn(begin)) begin += 2;
  while (begin < end && !isIn(end)) end -= 2;
  if (end - begin < LEAST_EDGE_PX) return null;
  const { dark, unit } = darkness(gray, frame, begin, end - begin);
  let best: Comb | null = null;
  for (let step = STEPS_PX[0]; step < Math.min(STEPS_PX[1], dark.length / LEAST_TEETH); step *= GROWTH)
    for (const bow of BOWS)
      for (let phase = 0; phase < step; phase += Math.max(0.75, step / 24)) {
        const comb = stretchOf(dark, step, bow, phase);
        if (comb.score > (best?.score ?? LEAST_SCORE)) best = comb;
      }
  return best && { ...best, from: begin + best.from, score: best.score * Math.min(1, unit / CLEAR) };
}

/** A pixel apart (dark-teeth.ts). */
function darkness(gray: Gray, frame: Frame, from: number, count: number) {
  const level = Float32Array.from({ length: count }, (_, i) => {
    const sum = ROWS_PX.reduce((all, row) => all + levelIn(gray, frame, from + i, row), 0);
    return sum / ROWS_PX.length;
  });
  return darkTeeth(level, BESIDE_PX);
}

/** The blade ends somewhere: the stretch of teeth that stands out most. */
function stretchOf(dark: Float32Array, first: number, bow: number, phase: number): Comb {
  let [at, step] = [phase, first];
  let [sum, teeth, begin] = [0, 0, phase];
  let best: Comb = { from: phase, stepPx: first, score: 0 };
  while (at < dark.length - 1 && step > 0.6 * first && step < 1.7 * first) {
    sum += toothAt(dark, at, step) - USUAL;
    teeth++;
    if (sum < 0) [sum, teeth, begin] = [0, 0, at + step];
    else if (sum > best.score && teeth >= LEAST_TEETH) best = { from: begin, stepPx: step, score: sum };
    at += step;
    step *= 1 + bow;
  }
  return best;
}
