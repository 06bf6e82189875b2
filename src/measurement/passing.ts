/**
 * When a curve passes a level, between two frames.
 *
 * Model    straight between neighbours; u = the larger of interval / sqrt(12) (where between the frames is open) and u of the value over
 *          the speed. A gap between them makes the interval longer, and u with it.
 * Fails    null where the level is not passed that way
 */
import type { CurvePoint, Uncertain } from './clip-measurement.ts';

export type Passing = Uncertain & {
  /** The frame before, counted from the curve's first. */
  readonly frame: number;
};

type Valued = { readonly timeS: number; readonly value: number; readonly u: number; readonly frame: number };

/** The first passing upwards (way 1) or downwards (way -1) within the frames given. value: of a frame; null in a gap. */
export function firstPassing(
  curve: readonly CurvePoint[],
  { from, to }: { readonly from: number; readonly to: number },
  level: number,
  way: 1 | -1,
  value: (point: CurvePoint) => Uncertain | null,
): Passing | null {
  let before: Valued | null = null;
  for (let frame = Math.max(0, from); frame <= Math.min(to, curve.length - 1); frame++) {
    const point = curve[frame] as CurvePoint;
    const seen = value(point);
    if (!seen) continue;
    const now = { timeS: point.timeS, ...seen, frame };
    if (before && way * (before.value - level) < 0 && way * (now.value - level) >= 0) {
      const share = (level - before.value) / (now.value - before.value);
      const interval = now.timeS - before.timeS;
      const perSecond = Math.abs(now.value - before.value) / interval;
      return {
        value: before.timeS + share * interval,
        u: Math.max(interval / Math.sqrt(12), Math.max(before.u, now.u) / perSecond),
        frame: before.frame,
      };
    }
    before = now;
  }
  return null;
}
