/**
 * How a picture moved from one frame of a clip to another, for carrying marks to where a hand goes on from.
 *
 * Model    q = c p + t: shift, turn and scale, with c and t complex numbers, by least squares of the places that stand still,
 *          each weighted by 1 / sigma^2; once more without those off by more than three times the middle misfit.
 * Assumes  near and far move alike: a phone that goes a hand's width aside moves them by a dozen pixels against each other. Nothing is
 *          measured or drawn by this.
 * Fails    null with fewer than LEAST_PLACES places seen in both frames, or all of them on one spot.
 * Source   the weighted least-squares similarity, worked by hand.
 */
import { middleOf } from '../../basics/middle.ts';
import type { FollowedPlace } from '../../marks/track.ts';
import type { PicturePoint } from '../../measurement/measurement.ts';

export type PictureMove = (point: PicturePoint) => PicturePoint;

export type Pair = { readonly from: FollowedPlace; readonly to: FollowedPlace };

export const LEAST_PLACES = 3;
const FAR_OFF = 3;

export function pictureMove(pairs: readonly Pair[]): PictureMove | null {
  const first = similarity(pairs);
  if (!first) return null;
  const misfits = pairs.map((pair) => misfitPx(first, pair));
  const middle = middleOf(misfits) ?? 0;
  const kept = pairs.filter((_, index) => (misfits[index] ?? 0) <= FAR_OFF * middle);
  return similarity(kept) ?? first;
}

function similarity(pairs: readonly Pair[]): PictureMove | null {
  if (pairs.length < LEAST_PLACES) return null;
  const weights = pairs.map(({ from, to }) => 1 / (from.sigmaPx ** 2 + to.sigmaPx ** 2));
  const mean = (value: (pair: Pair) => number) =>
    pairs.reduce((sum, pair, index) => sum + (weights[index] as number) * value(pair), 0) /
    weights.reduce((sum, weight) => sum + weight, 0);
  const [px, py] = [mean(({ from }) => from.xPx), mean(({ from }) => from.yPx)];
  const [qx, qy] = [mean(({ to }) => to.xPx), mean(({ to }) => to.yPx)];
  const spread = mean(({ from }) => (from.xPx - px) ** 2 + (from.yPx - py) ** 2);
  if (!(spread > 1)) return null;
  const along = mean(({ from, to }) => (from.xPx - px) * (to.xPx - qx) + (from.yPx - py) * (to.yPx - qy));
  const across = mean(({ from, to }) => (from.xPx - px) * (to.yPx - qy) - (from.yPx - py) * (to.xPx - qx));
  const [a, b] = [along / spread, across / spread];
  return ([x, y]) => [qx + a * (x - px) - b * (y - py), qy + b * (x - px) + a * (y - py)];
}

function misfitPx(move: PictureMove, { from, to }: Pair): number {
  const [x, y] = move([from.xPx, from.yPx]);
  return Math.hypot(x - to.xPx, y - to.yPx);
}
