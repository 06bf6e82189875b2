/**
 * How the picture moved between the seed frame and another, by what stands still: a first step only, as if all lay in one plane.
 *
 * Model    p = A q + b from a frame to the seed over the still things that the frame shows; settled
 *          (places-fit.ts)
 * Fails    null where fewer than six are seen
 */
import { type FollowedPlace, placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import { affineFit } from './affine-fit.ts';
import { type Place, settledFit } from './places-fit.ts';

const LEAST = 6;

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
  return settledFit(
    to,
    (weights) => affineFit(from, to, weights),
    (map, k) => map(from[k] as Place),
  );
}
