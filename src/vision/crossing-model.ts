/**
 * How bright a point near the crossing of two edges of a chessboard is: the model that is fitted to its pixels.
 *
 * Model    I(x, y) = m + a S(d1 / b) S(d2 / b) + p x + q y, S(t) = 2 P(t) - 1 with the normal distribution's P: two straight edges,
 *          blurred alike, b^2 = s^2 + what a pixel's own width blurs; di = (x - cx) cos ti + (y - cy) sin ti, the distance from an edge;
 *          unknowns, in order: cx, cy, t1, t2, s, m, a, p, q
 * Assumes  nothing but the four squares about the crossing.
 */
import { blurredStep, stepSlope } from './blurred-step.ts';

export const UNKNOWNS = 9;

export type CrossingModel = {
  /** Brightness at x, y; `slopes` is filled with its derivative by each unknown. */
  readonly brightness: (x: number, y: number, slopes: Float64Array) => number;
};

/** At one state of the unknowns. pixelBlur: standard deviation across a pixel, in the same lengths. */
export function crossingModel(k: Float64Array, pixelBlur: number): CrossingModel {
  const at = (index: number) => k[index] as number;
  const [cx, cy, mean, amplitude, p, q] = [at(0), at(1), at(5), at(6), at(7), at(8)];
  const [c1, s1, c2, s2] = [Math.cos(at(2)), Math.sin(at(2)), Math.cos(at(3)), Math.sin(at(3))];
  const blur = Math.hypot(at(4), pixelBlur);
  const bySpread = at(4) / blur;
  return {
    brightness(x, y, slopes) {
      const [dx, dy] = [x - cx, y - cy];
      const [d1, d2] = [dx * c1 + dy * s1, dx * c2 + dy * s2];
      const [f1, f2] = [2 * blurredStep(d1 / blur) - 1, 2 * blurredStep(d2 / blur) - 1];
      const by1 = (amplitude * f2 * 2 * stepSlope(d1 / blur)) / blur;
      const by2 = (amplitude * f1 * 2 * stepSlope(d2 / blur)) / blur;
      slopes[0] = -by1 * c1 - by2 * c2;
      slopes[1] = -by1 * s1 - by2 * s2;
      slopes[2] = by1 * (dy * c1 - dx * s1);
      slopes[3] = by2 * (dy * c2 - dx * s2);
      slopes[4] = (-(by1 * d1 + by2 * d2) / blur) * bySpread;
      slopes[5] = 1;
      slopes[6] = f1 * f2;
      slopes[7] = x;
      slopes[8] = y;
      return mean + amplitude * f1 * f2 + p * x + q * y;
    },
  };
}
