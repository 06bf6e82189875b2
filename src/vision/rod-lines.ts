/**
 * Pairs of lines that may be the two edges of the push rod.
 *
 * Model    a line t = at + slope s; seen in a piece as much as a step lies on it (rod-strip.ts). Every pair a rod's width apart, give or take
 *          what its width is uncertain by, about every middle line there may be, by small steps. Seen of a pair: the root of the
 *          product of both; the run of pieces in which that, less DOUBT each, sums up most is where the rod is seen
 */
import type { RodStrip } from './rod-strip.ts';
import type { RodWidth } from './rod-width.ts';

export type Line = { readonly at: number; readonly slope: number };
/** first, last: pieces. */
export type Run = { readonly first: number; readonly last: number; readonly score: number };
export type Pair = { readonly low: Line; readonly high: Line; readonly run: Run };

const DOUBT = 0.35;
/** Of the middle line: the pin's end, nearer to the camera than the rod, turns the way from face to pin. */
const MOST_SLOPE = 0.11;
const STEP_PX = 0.6;
const LEAST_SCORE = 1;
const MOST_PAIRS = 24;
const APART_PX = 1.2;

export const placeOn = ({ at, slope }: Line, s: number) => at + slope * s;

/** mostAsidePx: of the middle at s = 0; mostOff: of the width, over what it should be; isOther: whether a line there is something else. */
export type PairBounds = {
  readonly mostAsidePx: number;
  readonly mostOff: number;
  readonly isOther: (line: Line, run: Run) => boolean;
};

/** Best first. */
export function rodPairs(
  strip: RodStrip,
  width: RodWidth,
  { mostAsidePx, mostOff, isOther }: PairBounds,
): readonly Pair[] {
  const { pieces } = strip;
  const [from, to] = [pieces[0]?.s ?? 0, pieces.at(-1)?.s ?? 0];
  const mid = (from + to) / 2;
  const [half, narrows] = [width.halfAt(0), (width.halfAt(to) - width.halfAt(0)) / to];
  const widths = stepsTo(mostOff * half);
  const pairs: Pair[] = [];
  for (const slope of stepsTo(MOST_SLOPE * mid).map((by) => by / mid))
    for (const at of stepsTo(mostAsidePx))
      for (const wider of widths) {
        const low = { at: at - half - wider, slope: slope - narrows };
        const high = { at: at + half + wider, slope: slope + narrows };
        const run = runOf(strip, low, high);
        if (run && run.score > LEAST_SCORE && !isOther(low, run) && !isOther(high, run))
          pairs.push({ low, high, run });
      }
  return differing(pairs, from, mid);
}

/** To either side of nothing. */
function stepsTo(mostPx: number): readonly number[] {
  const count = Math.max(1, Math.ceil(mostPx / STEP_PX));
  return Array.from({ length: 2 * count + 1 }, (_, i) => ((i - count) * mostPx) / count);
}

function runOf({ pieces, roomPx }: RodStrip, low: Line, high: Line): Run | null {
  let best: Run | null = null;
  let [first, sum] = [0, 0];
  for (let i = 0; i < pieces.length; i++) {
    const { s, seen } = pieces[i] as RodStrip['pieces'][number];
    const a = seen[Math.round(placeOn(low, s)) + roomPx] ?? 0;
    const b = seen[Math.round(placeOn(high, s)) + roomPx] ?? 0;
    if (sum <= 0) [first, sum] = [i, 0];
    sum += Math.sqrt(a * b) - DOUBT;
    if (sum > (best?.score ?? 0)) best = { first, last: i, score: sum };
  }
  return best;
}

function differing(pairs: readonly Pair[], from: number, mid: number): readonly Pair[] {
  const kept: Pair[] = [];
  const near = (a: Line, b: Line) =>
    [from, mid].every((s) => Math.abs(placeOn(a, s) - placeOn(b, s)) < APART_PX);
  for (const pair of pairs.toSorted((a, b) => b.run.score - a.run.score)) {
    if (kept.length >= MOST_PAIRS) break;
    if (!kept.some(({ low, high }) => near(low, pair.low) && near(high, pair.high))) kept.push(pair);
  }
  return kept;
}
