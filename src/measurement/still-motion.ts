/**
 * How the picture moved between the seed frame and another, by what stands still: a first step only, as if all lay in one plane.
 *
 * Model    p = A q + b from a frame to the seed over the still things that the frame shows; those that disagree are weighted down
 *          (Huber, at three times the middle residual)
 * Fails    null where fewer than six are seen
 */
import { type FollowedPlace, placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import { affineFit, type Place } from './affine-fit.ts';

const LEAST = 6;
const ROUNDS = 4;
/** A middle residual by luck finer than this would throw sound places out. */
const FINEST_PX = 0.02;

export const seedFrame = ({ seed, firstIndex }: Track): number => seed.index - firstIndex;

export const stillsOf = ({ points }: Track): readonly TrackPoint[] =>
  points.filter(({ kind }) => kind === 'still');

export const placeOf = ({ xPx, yPx }: FollowedPlace): Place => [xPx, yPx];

/** Takes a place of the frame to where it would be in the seed frame. */
export function seedFromFrame(track: Track, frame: number): ((place: Place) => Place) | null {
  const seed = seedFrame(track);
  const pairs = stillsOf(track).flatMap((still) => {
    const [from, to] = [placeAt(still, frame), placeAt(still, seed)];
    return from && to ? [{ from: placeOf(from), to: placeOf(to) }] : [];
  });
  if (pairs.length < LEAST) return null;
  const [from, to] = [pairs.map((pair) => pair.from), pairs.map((pair) => pair.to)];
  let weights = pairs.map(() => 1);
  let map = affineFit(from, to, weights);
  for (let round = 1; map && round < ROUNDS; round++) {
    const off = from.map((place, i) => apart((map as (place: Place) => Place)(place), to[i] as Place));
    const middle = [...off].sort((a, b) => a - b)[Math.floor(off.length / 2)] as number;
    weights = off.map((each) => Math.min(1, (3 * Math.max(FINEST_PX, middle)) / each));
    map = affineFit(from, to, weights);
  }
  return map;
}

const apart = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);
