/**
 * When a curve passes a level.
 *
 * Model    between the last frame clearly on the near side (by two of its u) and the first clearly beyond, found about the first passing:
 *          where the straight line through all these frames meets the level. Neighbours alone would be those two that noise drove apart.
 *          u^2 = max(interval / sqrt(12), u of a frame / speed)^2 + (u of the level / speed)^2, interval the longest between two of
 *          these frames (where between the frames is open), speed that of the line. A gap makes the interval longer, and u with it.
 * Assumes  a curve that passes the level once while it is near it
 * Fails    null where the level is not passed that way
 */
import type { CurvePoint, Uncertain } from './clip-measurement.ts';

export type Passing = Uncertain & {
  /** The frame before, counted from the curve's first. */
  readonly frame: number;
};

/** z: beyond the level by so much. */
type Seen = { readonly t: number; readonly z: number; readonly u: number; readonly frame: number };

const CLEAR = 2;

/** The first passing upwards (way 1) or downwards (way -1) within the frames given. value: of a frame; null in a gap. */
export function firstPassing(
  curve: readonly CurvePoint[],
  { from, to }: { readonly from: number; readonly to: number },
  level: Uncertain,
  way: 1 | -1,
  value: (point: CurvePoint) => Uncertain | null,
): Passing | null {
  const begin = Math.max(0, from);
  const seen = curve.slice(begin, to + 1).flatMap((point, i): Seen[] => {
    const one = value(point);
    return one ? [{ t: point.timeS, z: way * (one.value - level.value), u: one.u, frame: begin + i }] : [];
  });
  const first = seen.findIndex(({ z }, i) => i > 0 && z >= 0 && (seen[i - 1] as Seen).z < 0);
  if (first < 0) return null;
  const beyond = seen.findIndex(({ z, u }, i) => i >= first && z > CLEAR * u);
  const last = beyond < 0 ? first : beyond;
  const before = seen.findLastIndex(({ z, u }, i) => i < last && z < -CLEAR * u);
  const near = seen.slice(before < 0 ? Math.min(first, last) - 1 : before, last + 1);
  return crossingOf(near, level.u);
}

function crossingOf(near: readonly Seen[], uLevel: number): Passing | null {
  const [begin, end] = [near[0] as Seen, near.at(-1) as Seen];
  const mean = (of: (seen: Seen) => number) => near.reduce((sum, seen) => sum + of(seen), 0) / near.length;
  const [mt, mz] = [mean(({ t }) => t), mean(({ z }) => z)];
  const square = near.reduce((sum, { t }) => sum + (t - mt) ** 2, 0);
  const speed = near.reduce((sum, { t, z }) => sum + (t - mt) * (z - mz), 0) / square;
  if (!(speed > 0)) return null;
  const value = Math.min(end.t, Math.max(begin.t, mt - mz / speed));
  const interval = Math.max(...near.slice(1).map(({ t }, i) => t - (near[i] as Seen).t));
  const uFrame = Math.max(...near.map(({ u }) => u));
  return {
    value,
    u: Math.hypot(Math.max(interval / Math.sqrt(12), uFrame / speed), uLevel / speed),
    frame: (near.findLast(({ t }) => t <= value) ?? begin).frame,
  };
}
