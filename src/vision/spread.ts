/**
 * Few of many places, spread over the picture, the good and near ones first.
 *
 * Model    in the order of their cost each is taken that keeps a distance from all taken; the distance shrinks until there are
 *          enough
 */
import type { Point } from './point.ts';

const SHRINK = 0.7;
/** Nearer than this two places say nearly the same. */
const LEAST_SHARE = 0.05;

/** reachPx: the distance that is tried first. */
export function spread<T>(
  candidates: readonly T[],
  placeOf: (candidate: T) => Point,
  costOf: (candidate: T) => number,
  { most, reachPx }: { readonly most: number; readonly reachPx: number },
): readonly T[] {
  const inOrder = candidates
    .map((candidate) => ({ candidate, place: placeOf(candidate), cost: costOf(candidate) }))
    .sort((a, b) => a.cost - b.cost);
  const taken: typeof inOrder = [];
  for (let apartPx = reachPx; taken.length < most && apartPx > LEAST_SHARE * reachPx; apartPx *= SHRINK)
    for (const each of inOrder) {
      if (taken.length >= most) break;
      const near = ({ place: [x, y] }: typeof each) =>
        Math.hypot(x - each.place[0], y - each.place[1]) < apartPx;
      if (!taken.some(near)) taken.push(each);
    }
  return taken.map(({ candidate }) => candidate);
}
