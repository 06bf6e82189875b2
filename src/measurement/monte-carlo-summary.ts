/**
 * What the results of many trials say of a quantity.
 *
 * Model    mean, standard deviation (M - 1); 95 % coverage intervals from the ordered values y(1) .. y(M), q = 0.95 M rounded:
 *          probabilistically symmetric [y(r), y(r + q)], r = (M - q) / 2 rounded up; shortest: the r of the least y(r + q) - y(r).
 * Assumes  at least a hundred finite values.
 * Source   JCGM 101:2008, 7.6 and 7.7 (clauses from memory).
 */
import { assert } from '../basics/result.ts';

export type Interval = { readonly low: number; readonly high: number };

export type Histogram = {
  readonly low: number;
  readonly binWidth: number;
  readonly counts: readonly number[];
};

export type TrialSummary = {
  readonly trials: number;
  readonly mean: number;
  readonly u: number;
  /** As many of the trials lie below it as above. */
  readonly symmetric: Interval;
  readonly shortest: Interval;
  readonly histogram: Histogram;
};

const COVERAGE = 0.95;
const LEAST_TRIALS = 100;
const BINS = 40;
/** The rare trials beyond this share at either side would squeeze the others together: they are not drawn. */
const UNDRAWN_SHARE = 0.001;

export function summaryOf(values: Float64Array): TrialSummary {
  const trials = values.length;
  assert(trials >= LEAST_TRIALS, 'a summary needs a hundred trials');
  const ordered = values.slice().sort();
  const mean = ordered.reduce((sum, value) => sum + value, 0) / trials;
  const squares = ordered.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const within = Math.round(COVERAGE * trials);
  const below = Math.ceil((trials - within) / 2);
  const at = (rank: number): number => ordered[rank - 1] as number;
  return {
    trials,
    mean,
    u: Math.sqrt(squares / (trials - 1)),
    symmetric: { low: at(below), high: at(below + within) },
    shortest: shortestOf(ordered, within),
    histogram: histogramOf(ordered, UNDRAWN_SHARE),
  };
}

function shortestOf(ordered: Float64Array, within: number): Interval {
  let best: Interval = { low: ordered[0] as number, high: ordered[within] as number };
  for (let i = 1; i + within < ordered.length; i++) {
    const [low, high] = [ordered[i] as number, ordered[i + within] as number];
    if (high - low < best.high - best.low) best = { low, high };
  }
  return best;
}

function histogramOf(ordered: Float64Array, undrawn: number): Histogram {
  const cut = Math.floor(undrawn * ordered.length);
  const drawn = ordered.subarray(cut, ordered.length - cut);
  const [low, high] = [drawn[0] as number, drawn[drawn.length - 1] as number];
  // All trials alike, as with nothing uncertain: any width will do.
  const binWidth = (high - low) / BINS || 1;
  const counts = new Array<number>(BINS).fill(0);
  for (const value of drawn) {
    const bin = Math.min(BINS - 1, Math.floor((value - low) / binWidth));
    counts[bin] = (counts[bin] as number) + 1;
  }
  return { low, binWidth, counts };
}
