/**
 * Long strokes that come again and again along a line: where those of whole inches or centimetres may be beside a push rod.
 *
 * Model    lines about along the rod, beside it on both sides. Darkness along a line: the mean over rows about it less that beside it on both sides.
 *          A comb: places a step apart that grows or shrinks evenly; its score is the darkness at its teeth less that halfway between them, over
 *          the stretch of teeth where that is most. Lines, steps, bows and starts in turn; the best that differ
 * Assumes  a tape within twelve degrees of the rod's direction; face to pin as far apart as they usually are
 * Fails    an empty list
 */
import { type Frame, levelIn, placeIn } from './assist-tape-edge.ts';
import { darkTeeth, toothAt } from './dark-teeth.ts';
import type { Gray } from './gray.ts';
import { isInPicture } from './level-at.ts';
import type { Point } from './point.ts';

/** Places of whole ones along the frame. */
export type Comb = {
  readonly frame: Frame;
  readonly places: readonly number[];
  readonly stepPx: number;
  readonly score: number;
};

/** Of the length from face to pin. */
const ASIDE = { most: 0.46, step: 0.022 };
const ROWS = 0.04;
const ALONG: readonly [number, number] = [-0.15, 2.6];
const BESIDE = 0.011;
const TURN_RAD = { most: 0.21, step: 0.03 };
/** Of the step, from one to the next: 40 degrees off square from 0.7 m it changes by 0.04. */
const BOWS = [-0.036, -0.018, 0, 0.018, 0.036];
const GROWTH = 1.03;
const LEAST_TEETH = 5;
const LEAST_STEP_PX = 24;
const LEAST_SCORE = 1.5;
const MOST_COMBS = 14;
/** What a tooth of no meaning has over the place halfway, at times. */
const USUAL = 0.25;

/** steps: of a whole one, over the length from face to pin. */
export function strokeCombs(
  gray: Gray,
  facePx: Point,
  pinPx: Point,
  steps: readonly [number, number],
): readonly Comb[] {
  const [dx, dy] = [pinPx[0] - facePx[0], pinPx[1] - facePx[1]];
  const rodPx = Math.hypot(dx, dy);
  const found: Comb[] = [];
  for (const turn of about(TURN_RAD))
    for (const aside of about(ASIDE)) {
      const rad = Math.atan2(dy, dx) + turn;
      const along: Point = [Math.cos(rad), Math.sin(rad)];
      const across: Point = [-along[1], along[0]];
      // Turned about the middle of the rod: the same lines beside it.
      const middle: Point = [facePx[0] + 0.6 * dx, facePx[1] + 0.6 * dy];
      const frame = {
        along,
        across,
        origin: placeIn({ origin: middle, along, across }, -0.6 * rodPx, aside * rodPx),
      };
      const line = darkness(gray, frame, rodPx);
      if (!line) continue;
      const best = bestOn(line.dark, rodPx, steps);
      if (best) found.push({ ...best, frame, places: best.places.map((s) => s + line.from) });
    }
  found.sort((a, b) => b.score - a.score);
  const kept: Comb[] = [];
  for (const comb of found) {
    if (kept.length >= MOST_COMBS) break;
    if (kept.every((other) => isOther(comb, other, rodPx))) kept.push(comb);
  }
  return kept;
}

const about = ({ most, step }: { readonly most: number; readonly step: number }) => {
  const n = Math.round(most / step);
  return Array.from({ length: 2 * n + 1 }, (_, i) => (i - n) * step);
};

function isOther(a: Comb, b: Comb, rodPx: number): boolean {
  const [p, q] = [a, b].map(({ frame, places }) =>
    placeIn(frame, places[places.length >> 1] as number, 0),
  ) as [Point, Point];
  const off = Math.abs((p[0] - q[0]) * b.frame.across[0] + (p[1] - q[1]) * b.frame.across[1]);
  return Math.abs(a.stepPx / b.stepPx - 1) > 0.06 || off > 0.05 * rodPx;
}

type Line = { readonly dark: Float32Array; readonly from: number };

/** A pixel apart (dark-teeth.ts). Null where hardly any of it is in the picture. */
function darkness(gray: Gray, frame: Frame, rodPx: number): Line | null {
  const isIn = (s: number) => isInPicture(gray, ...placeIn(frame, s, 0), 2);
  let [from, to] = ALONG.map((by) => Math.round(by * rodPx)) as [number, number];
  while (from < to && !isIn(from)) from += 4;
  while (from < to && !isIn(to)) to -= 4;
  const count = to - from;
  if (count < 0.6 * rodPx) return null;
  const rows = Math.max(3, Math.min(7, Math.round((ROWS * rodPx) / 2)));
  const level = new Float32Array(count);
  for (let i = 0; i < count; i++) {
    let sum = 0;
    for (let row = 0; row < rows; row++)
      sum += levelIn(gray, frame, from + i, ROWS * rodPx * ((row + 0.5) / rows - 0.5));
    level[i] = sum / rows;
  }
  const beside = Math.max(2, Math.round(BESIDE * rodPx));
  return { dark: darkTeeth(level, beside).dark, from };
}

function bestOn(
  dark: Float32Array,
  rodPx: number,
  steps: readonly [number, number],
): Omit<Comb, 'frame'> | null {
  const most = Math.min(steps[1] * rodPx, dark.length / LEAST_TEETH);
  let best: {
    readonly step: number;
    readonly bow: number;
    readonly phase: number;
    readonly score: number;
  } | null = null;
  let least = LEAST_SCORE;
  for (let step = Math.max(LEAST_STEP_PX, steps[0] * rodPx); step < most; step *= GROWTH)
    for (const bow of BOWS)
      for (let phase = 0; phase < step; phase += Math.max(1, step / 24)) {
        const { score } = stretchOf(dark, step, bow, phase);
        if (score > least) {
          best = { step, bow, phase, score };
          least = score;
        }
      }
  if (!best) return null;
  const { step, bow, phase, score } = best;
  const { from, to } = stretchOf(dark, step, bow, phase);
  const places: number[] = [];
  for (let i = 0, [at, each] = [phase, step]; i < to; i++, at += each, each *= 1 + bow)
    if (i >= from) places.push(at);
  return { places, stepPx: step, score };
}

/** The blade ends somewhere: the stretch of teeth that stands out most. */
function stretchOf(dark: Float32Array, first: number, bow: number, phase: number) {
  let [at, step] = [phase, first];
  let [sum, begin, score, from, to] = [0, 0, 0, 0, 0];
  for (let i = 0; at < dark.length - 1 && step > 0.6 * first && step < 1.7 * first; i++) {
    sum += toothAt(dark, at, step) - USUAL;
    if (sum < 0) {
      sum = 0;
      begin = i + 1;
    } else if (sum > score && i + 1 - begin >= LEAST_TEETH) {
      score = sum;
      from = begin;
      to = i + 1;
    }
    at += step;
    step *= 1 + bow;
  }
  return { score, from, to };
}
