/**
 * Where the marks of the seed lie in another frame of a followed clip: as followed, else carried there with the picture from the nearest
 * frame that shows them. A place to begin dragging from, never a measured one.
 */
import type { Mark } from '../../marks/mark.ts';
import { type FollowedPlace, placeAt, sharpestPlace, type Track } from '../../marks/track.ts';
import type { View } from '../../marks/view.ts';
import { type Pair, pictureMove } from './picture-move.ts';

/** i counts from the track's first frame. Marks that came of following are left out. */
export function marksInFrame(track: Track, seed: View, i: number): readonly Mark[] {
  const carry = carrierTo(track, i);
  const seedAt = track.seed.index - track.firstIndex;
  return seed.marks
    .filter(({ placedBy, kind }) => placedBy !== 'tracker' && kind !== 'tie-point')
    .map((mark): Mark => {
      const place = seenNear(track, mark.kind, i);
      const [xPx, yPx] = place
        ? carry(place.at, [place.seen.xPx, place.seen.yPx])
        : carry(seedAt, [mark.xPx, mark.yPx]);
      return { ...mark, xPx, yPx, placedBy: 'tracker' };
    });
}

function seenNear(
  track: Track,
  kind: Mark['kind'],
  i: number,
): { readonly at: number; readonly seen: FollowedPlace } | null {
  if (kind !== 'clevis-pin' && kind !== 'chamber-face' && kind !== 'camshaft-end') return null;
  for (let off = 0; off < track.timeTicks.length; off++)
    for (const at of [i - off, i + off]) {
      const seen = sharpestPlace(track, kind, at);
      if (seen) return { at, seen };
    }
  return null;
}

type Place = readonly [number, number];

function carrierTo(track: Track, to: number): (from: number, place: Place) => Place {
  return (from, place) => {
    if (from === to) return place;
    const pairs = track.points.flatMap((point): Pair[] => {
      const [a, b] = [placeAt(point, from), placeAt(point, to)];
      return a && b && point.kind === 'still' ? [{ from: a, to: b }] : [];
    });
    return pictureMove(pairs)?.(place) ?? place;
  };
}
