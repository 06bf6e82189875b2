/** Of what stands still, the places that tie frames together best: seen in all of them, sharp, and spread over the picture. */
import { middleOf } from '../basics/middle.ts';
import { placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import { seedFrame, stillsOf } from './still-motion.ts';

/** Five tie two pictures in every direction; the others contradict, and average. */
export const LEAST_TIES = 6;
const MOST_TIES = 24;
const SEEN_SHARE = 0.8;

/** frames: where they should be seen; always: where they must. */
export function spreadTies(
  track: Track,
  frames: readonly number[],
  always: readonly number[],
): readonly TrackPoint[] {
  const pool = stillsOf(track).filter((still) => {
    const seen = (frame: number) => placeAt(still, frame) !== null;
    return always.every(seen) && frames.filter(seen).length >= SEEN_SHARE * frames.length;
  });
  const seed = seedFrame(track);
  const placed = pool.flatMap((still) => {
    const place = placeAt(still, seed);
    return place ? [{ still, place, sigma: middleSigma(still, frames) }] : [];
  });
  const chosen: (typeof placed)[number][] = [];
  while (chosen.length < Math.min(MOST_TIES, placed.length)) {
    const worth = (one: (typeof placed)[number]) =>
      Math.min(
        ...chosen.map(({ place }) => Math.hypot(place.xPx - one.place.xPx, place.yPx - one.place.yPx)),
        1e4,
      ) /
      (0.1 + one.sigma);
    const left = placed.filter((one) => !chosen.includes(one));
    chosen.push(left.reduce((best, one) => (worth(one) > worth(best) ? one : best)));
  }
  return chosen.map(({ still }) => still);
}

function middleSigma(still: TrackPoint, frames: readonly number[]): number {
  return middleOf(frames.flatMap((frame) => placeAt(still, frame)?.sigmaPx ?? [])) ?? 1;
}
