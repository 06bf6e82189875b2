/**
 * Where a dark stroke crosses a line, to a small part of a pixel.
 *
 * Model    brightness along the line, averaged over rows beside it: b + c x - a exp(-(x - p)^2 / 2 w^2); p by Gauss-Newton, the width w
 *          common to all strokes; sigma of p from what the model leaves over
 * Assumes  neighbours of the same length on both sides, or none within the window: they pull evenly
 * Fails    null where the stroke is faint, or lies elsewhere
 */
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';

export type Stroke = {
  readonly atPx: number;
  readonly sigmaPx: number;
  readonly depth: number;
  readonly misfit: number;
};

/** Levels of 255. */
const LEAST_DEPTH = 6;
const PER_PX = 2;
const UNKNOWNS = 4;
const MOST_ROUNDS = 12;

/** profile: brightness at a place along the line. */
export function strokeNear(
  profile: (s: number) => number,
  s0: number,
  windowPx: number,
  widthPx: number,
): Stroke | null {
  const count = Math.round(2 * windowPx * PER_PX) + 1;
  const levels = new Float64Array(count);
  let least = Infinity;
  let most = -Infinity;
  let p = 0;
  for (let i = 0; i < count; i++) {
    const x = i / PER_PX - windowPx;
    const level = profile(s0 + x);
    levels[i] = level;
    if (level < least) {
      least = level;
      p = x;
    }
    if (level > most) most = level;
  }
  let b = most;
  let c = 0;
  let a = most - least;
  const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
  const right = new Float64Array(UNKNOWNS);
  const slopes = new Float64Array(UNKNOWNS);
  slopes[0] = 1;
  let last: { readonly sum: number; readonly lower: Float64Array } | null = null;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    normal.fill(0);
    right.fill(0);
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const x = i / PER_PX - windowPx;
      const z = (x - p) / widthPx;
      const bell = Math.exp((-z * z) / 2);
      slopes[1] = x;
      slopes[2] = -bell;
      slopes[3] = (-a * bell * z) / widthPx;
      const residual = (levels[i] as number) - (b + c * x - a * bell);
      sum += residual * residual;
      for (let j = 0; j < UNKNOWNS; j++) {
        const slope = slopes[j] as number;
        right[j] = (right[j] as number) + slope * residual;
        for (let k = 0; k <= j; k++)
          normal[j * UNKNOWNS + k] = (normal[j * UNKNOWNS + k] as number) + slope * (slopes[k] as number);
      }
    }
    const lower = choleskyFactor(normal, UNKNOWNS);
    if (!lower) return null;
    const off = choleskySolve(lower, UNKNOWNS, right);
    const dp = off[3] as number;
    b += off[0] as number;
    c += off[1] as number;
    a += off[2] as number;
    p += Math.max(-0.7, Math.min(0.7, dp));
    last = { sum, lower };
    if (Math.abs(p) > windowPx) return null;
    if (Math.abs(dp) < 1e-3) break;
  }
  if (!last || a < LEAST_DEPTH) return null;
  const cofactors = inverseFromLower(lowerInverse(last.lower, UNKNOWNS), UNKNOWNS);
  const variance = cofactors[UNKNOWNS * UNKNOWNS - 1] as number;
  // Half of the samples lie between pixels and say nothing new.
  const sigmaPx = Math.sqrt((PER_PX * last.sum * variance) / (count - UNKNOWNS));
  return { atPx: s0 + p, sigmaPx, depth: a, misfit: Math.sqrt(last.sum / count) / a };
}
