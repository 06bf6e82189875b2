/** Features of two pictures that look alike: each the other's best, and clearly better than the second best. */
import { assert } from '../basics/result.ts';
import type { FeatureMatch, Opencv } from './opencv.ts';
import type { Features } from './picture-features.ts';
import type { Point } from './point.ts';
import type { Keep } from './with-opencv.ts';

export type FeaturePair = {
  readonly first: Point;
  readonly second: Point;
  /** By how much the second picture shows it turned. */
  readonly turnRad: number;
  /** Difference over that of the second best: the smaller, the surer. */
  readonly ratio: number;
};

/** Of the difference to the second best. */
const MOST_RATIO = 0.8;

export function featurePairs(cv: Opencv, keep: Keep, one: Features, other: Features): readonly FeaturePair[] {
  if (one.places.length < 2 || other.places.length < 2) return [];
  const there = bestTwo(cv, keep, one, other);
  const back = bestTwo(cv, keep, other, one);
  return there.flatMap(([best, next], index): FeaturePair[] => {
    if (!best || !next || back[best.trainIdx]?.[0]?.trainIdx !== index) return [];
    const ratio = best.distance / Math.max(next.distance, 1);
    const [first, second] = [one.places[index], other.places[best.trainIdx]];
    assert(first && second, 'a match names features of both pictures');
    const turnDeg = (other.directionsDeg[best.trainIdx] ?? 0) - (one.directionsDeg[index] ?? 0);
    return ratio > MOST_RATIO ? [] : [{ first, second, turnRad: (turnDeg * Math.PI) / 180, ratio }];
  });
}

function bestTwo(
  cv: Opencv,
  keep: Keep,
  from: Features,
  among: Features,
): readonly (readonly FeatureMatch[])[] {
  const matcher = keep(new cv.BFMatcher(cv.NORM_HAMMING));
  const lists = keep(new cv.DMatchVectorVector());
  matcher.knnMatch(from.looks, among.looks, lists, 2);
  return Array.from({ length: lists.size() }, (_, i) => {
    const list = lists.get(i);
    const matches = Array.from({ length: list.size() }, (_, k) => list.get(k));
    list.delete();
    return matches;
  });
}
