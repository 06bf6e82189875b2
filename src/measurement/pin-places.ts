/**
 * Where the pin was seen in each frame, as one spot: what was followed from several hand marks lies beside each other by what the hands
 * missed, and a step from one to the next is no motion of the rod.
 *
 * Model    the spots in the track's order; each is moved onto those before by the median of how far it lies from them in the frames that
 *          show both
 * Assumes  picture and part turn little: a spot a few pixels beside another stays where it lies to it
 * Fails    null of a frame that does not show it; a spot that shares no frame with the others stays as it is
 */
import { middleOf } from '../basics/middle.ts';
import { type FollowedPlace, placeAt, type Track } from '../marks/track.ts';

export function pinPlaces({ points, timeTicks }: Track): readonly (FollowedPlace | null)[] {
  const places: (FollowedPlace | null)[] = timeTicks.map(() => null);
  for (const point of points) {
    if (point.kind !== 'clevis-pin') continue;
    const own = timeTicks.map((_ticks, frame) => placeAt(point, frame));
    const both = own.flatMap((place, frame) => {
      const before = places[frame];
      return place && before ? [{ xPx: before.xPx - place.xPx, yPx: before.yPx - place.yPx }] : [];
    });
    const [xPx = 0, yPx = 0] = [middleOf(both.map((off) => off.xPx)), middleOf(both.map((off) => off.yPx))];
    for (const [frame, place] of own.entries())
      if (place) places[frame] ??= { ...place, xPx: place.xPx + xPx, yPx: place.yPx + yPx };
  }
  return places;
}
