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

/** profile: brightness at a place along the line. */
export function strokeNear(
  profile: (s: number) => number,
  s0: number,
  windowPx: number,
  widthPx: number,
): Stroke | null {
  const count = Math.round(2 * windowPx * PER_PX) + 1;
  const xs = Array.from({ length: count }, (_, i) => -windowPx + i / PER_PX);
  const levels = xs.map((x) => profile(s0 + x));
  const [least, most] = [Math.min(...levels), Math.max(...levels)];
  let p = xs[levels.indexOf(least)] as number;
  let [b, c, a] = [most, 0, most - least];
  let last: { readonly sum: number; readonly u: number } | null = null;
  for (let round = 0; round < 12; round++) {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const right = new Float64Array(UNKNOWNS);
    let sum = 0;
    for (const [i, x] of xs.entries()) {
      const z = (x - p) / widthPx;
      const bell = Math.exp((-z * z) / 2);
      const slopes = [1, x, -bell, (-a * bell * z) / widthPx];
      const residual = (levels[i] as number) - (b + c * x - a * bell);
      sum += residual * residual;
      for (let j = 0; j < UNKNOWNS; j++) {
        right[j] = (right[j] as number) + (slopes[j] as number) * residual;
        for (let k = 0; k < UNKNOWNS; k++)
          normal[j * UNKNOWNS + k] =
            (normal[j * UNKNOWNS + k] as number) + (slopes[j] as number) * (slopes[k] as number);
      }
    }
    const lower = choleskyFactor(normal, UNKNOWNS);
    if (!lower) return null;
    const [db, dc, da, dp] = choleskySolve(lower, UNKNOWNS, right) as unknown as [
      number,
      number,
      number,
      number,
    ];
    [b, c, a] = [b + db, c + dc, a + da];
    p += Math.max(-0.7, Math.min(0.7, dp));
    const variance = inverseFromLower(lowerInverse(lower, UNKNOWNS), UNKNOWNS)[
      UNKNOWNS * UNKNOWNS - 1
    ] as number;
    // Half of the samples lie between pixels and say nothing new.
    last = { sum, u: Math.sqrt((PER_PX * sum * variance) / (count - UNKNOWNS)) };
    if (Math.abs(p) > windowPx) return null;
    if (Math.abs(dp) < 1e-3) break;
  }
  if (!last || a < LEAST_DEPTH) return null;
  return { atPx: s0 + p, sigmaPx: last.u, depth: a, misfit: Math.sqrt(last.sum / count) / a };
}
