/**
 * How a curve scatters while the brake rests, and what that does to a mean and to a slope taken there.
 *
 * Model    noise = one part anew in every frame (w), one alike for a while (s): correlation exp(-|t|/T), T = 1 s
 *          w       from second differences (change-points.ts)
 *          s^2     sum over the rests of (|e|^2 - w^2 (n - 2)) / sum of tr((I - H) R): e a rest's values less their straight line, H what
 *                  the line takes along, R the correlations
 *          s at least w / 2; widened by sqrt(v / (v - 2)): with v degrees of freedom an s^2 is itself hardly known; v = sum of what the line leaves, as a
 *                  share, times (1 + lasting / T)
 *          u^2     of sum a_i y_i: w^2 a.a + s^2 a.R a; mean: a_i = 1/n; slope: a_i = (t_i - mean t) / sum (t - mean t)^2
 *          a.R a by one run through the values that lets the sum so far fade
 * Assumes  noise of one kind in all rests of a clip; a hand's sway and what the stills make of it last about T (common practice, no source)
 * Fails    where noise lasts much longer than T and than the rests: u then says too little
 * Source   variance components by equating squares to their expectation; Henderson, Biometrics 9 (1953) 226 (from memory);
 *          widening: standard uncertainty of a scaled and shifted t distribution, JCGM 101:2008, 6.4.9 (clause from memory)
 */
import { type Sample, scatterOf } from './change-points.ts';

export type RestNoise = { readonly white: number; readonly slow: number };

const LASTING_S = 1;
/** Fewer values than this tell nothing beside their own line. */
const LEAST = 4;
/** Of w: what is followed is never off anew in every frame only. Common practice, no source. */
const LEAST_SLOW = 0.5;
/** The widening is finite from here on. */
const LEAST_FREE = 3;

export function restNoise(rests: readonly (readonly Sample[])[]): RestNoise {
  const told = rests.filter(({ length }) => length >= LEAST);
  const values = told.reduce((sum, { length }) => sum + length, 0);
  if (values === 0) return { white: 0, slow: 0 };
  const white = Math.sqrt(told.reduce((sum, rest) => sum + rest.length * scatterOf(rest) ** 2, 0) / values);
  let [squares, expected, free] = [0, 0, 0];
  for (const rest of told) {
    const n = rest.length;
    const line = slopeWeights(rest);
    const lineSize = Math.sqrt(line.reduce((sum, a) => sum + a * a, 0));
    const [level, tilt] = [rest.map(() => 1 / Math.sqrt(n)), line.map((a) => a / lineSize)];
    const along = (q: readonly number[]) => q.reduce((sum, each, i) => sum + each * (rest[i] as Sample).y, 0);
    const whole = rest.reduce((sum, { y }) => sum + y * y, 0);
    squares += whole - along(level) ** 2 - along(tilt) ** 2 - white ** 2 * (n - 2);
    const left = n - alikeForm(rest, level) - alikeForm(rest, tilt);
    expected += left;
    free += (left / n) * (1 + ((rest[n - 1] as Sample).t - (rest[0] as Sample).t) / LASTING_S);
  }
  const widened = Math.sqrt(Math.max(free, LEAST_FREE) / (Math.max(free, LEAST_FREE) - 2));
  return { white, slow: Math.max(LEAST_SLOW * white, widened * Math.sqrt(Math.max(0, squares / expected))) };
}

export function uOfMean(rest: readonly Sample[], noise: RestNoise): number {
  return uOf(
    rest,
    rest.map(() => 1 / rest.length),
    noise,
  );
}

export function uOfSlope(rest: readonly Sample[], noise: RestNoise): number {
  return uOf(rest, slopeWeights(rest), noise);
}

/** Of the line through all: sum of weights times values. */
export function slopeWeights(rest: readonly Sample[]): readonly number[] {
  const mean = rest.reduce((sum, { t }) => sum + t, 0) / rest.length;
  const square = rest.reduce((sum, { t }) => sum + (t - mean) ** 2, 0);
  return rest.map(({ t }) => (t - mean) / square);
}

function uOf(rest: readonly Sample[], weights: readonly number[], { white, slow }: RestNoise): number {
  const square = weights.reduce((sum, a) => sum + a * a, 0);
  return Math.sqrt(white ** 2 * square + slow ** 2 * alikeForm(rest, weights));
}

/** a . R a */
function alikeForm(rest: readonly Sample[], a: readonly number[]): number {
  let [sum, faded] = [0, 0];
  for (const [i, { t }] of rest.entries()) {
    const keep = i === 0 ? 0 : Math.exp(-(t - (rest[i - 1] as Sample).t) / LASTING_S);
    const own = a[i] as number;
    faded *= keep;
    sum += own * own + 2 * own * faded;
    faded += own;
  }
  return sum;
}
