/**
 * What is drawn over one frame of a followed clip: a cross on each followed place, and the stroke as a dimension that has come as
 * far as the pin has.
 *
 * Model    the released extension line and the axis are carried along from the frame they were drawn for (picture-move.ts); the other
 *          extension line runs through the pin as followed, in the same direction, to the dimension line.
 * Fails    a place that is not seen has no cross; without the pin, or with too little that stands still, there is no dimension.
 */
import {
  type FollowedKind,
  type FollowedPlace,
  placeAt,
  sharpestPlace,
  type Track,
} from '../../marks/track.ts';
import type { PicturePoint, StrokeDrawing } from '../../measurement/measurement.ts';
import { type Pair, type PictureMove, pictureMove } from './picture-move.ts';

/** A drawing of the stroke, and the frame of the track it was made for. */
export type Drawn = { readonly drawing: StrokeDrawing; readonly at: number };

export type Cross = { readonly kind: FollowedKind; readonly xPx: number; readonly yPx: number };

export type FollowLines = {
  readonly crosses: readonly Cross[];
  /** Followed things that are not seen in this frame; of what stands still nothing is said. */
  readonly unseen: readonly FollowedKind[];
  readonly drawing: StrokeDrawing | null;
};

/** i counts from the track's first frame. */
export function followLines(track: Track, i: number, drawn: Drawn | null): FollowLines {
  const seen = [...stillsSeen(track, i), ...thingsSeen(track, i)];
  const pin = seen.find(({ kind }) => kind === 'clevis-pin')?.place;
  const move = drawn && moveBetween(track, drawn.at, i);
  return {
    crosses: seen.flatMap(({ kind, place }) => (place ? [{ kind, xPx: place.xPx, yPx: place.yPx }] : [])),
    unseen: [
      ...new Set(seen.filter(({ kind, place }) => !place && kind !== 'still').map(({ kind }) => kind)),
    ],
    drawing: drawn && move && pin ? carried(drawn.drawing, move, [pin.xPx, pin.yPx]) : null,
  };
}

type Seen = { readonly kind: FollowedKind; readonly place: FollowedPlace | null };

const stillsSeen = ({ points }: Track, i: number): readonly Seen[] =>
  points
    .filter(({ kind }) => kind === 'still')
    .map((point) => ({ kind: point.kind, place: placeAt(point, i) }));

/** Each graduation is one; of face, pin and camshaft several spots may be followed, and one cross says where it is. */
function thingsSeen(track: Track, i: number): readonly Seen[] {
  const graduations = track.points.filter(({ kind }) => kind === 'tape-graduation');
  const kinds = new Set(track.points.map(({ kind }) => kind));
  const single = (['clevis-pin', 'chamber-face', 'camshaft-end'] as const).filter((kind) => kinds.has(kind));
  return [
    ...single.map((kind): Seen => ({ kind, place: sharpestPlace(track, kind, i) })),
    ...graduations.map((point): Seen => ({ kind: point.kind, place: placeAt(point, i) })),
  ];
}

const STANDS_STILL: readonly FollowedKind[] = ['still', 'chamber-face', 'camshaft-end'];

function moveBetween(track: Track, from: number, to: number): PictureMove | null {
  const pairs = track.points.flatMap((point): Pair[] => {
    const [a, b] = [placeAt(point, from), placeAt(point, to)];
    return a && b && STANDS_STILL.includes(point.kind) ? [{ from: a, to: b }] : [];
  });
  return pictureMove(pairs);
}

function carried(drawing: StrokeDrawing, move: PictureMove, pin: PicturePoint): StrokeDrawing | null {
  const line = ([a, b]: readonly [PicturePoint, PicturePoint]) => [move(a), move(b)] as const;
  const released = line(drawing.extensions[0]);
  const applied = line(drawing.extensions[1]);
  const [from, to] = line(drawing.dimension);
  const along = less(to, from);
  // From the place of either pin outwards; in perspective the two differ by a hair.
  const outwards = plus(less(released[1], released[0]), less(applied[1], applied[0]));
  const denominator = cross(along, outwards);
  if (Math.abs(denominator) < 1e-6) return null;
  const share = cross(less(pin, from), outwards) / denominator;
  const end = plus(from, scaled(along, share));
  const beyond = less(released[1], from);
  return {
    state: drawing.state,
    axis: line(drawing.axis),
    extensions: [released, [pin, plus(end, beyond)]],
    dimension: [from, end],
  };
}

const less = (a: PicturePoint, b: PicturePoint): PicturePoint => [a[0] - b[0], a[1] - b[1]];
const plus = (a: PicturePoint, b: PicturePoint): PicturePoint => [a[0] + b[0], a[1] + b[1]];
const scaled = (a: PicturePoint, by: number): PicturePoint => [a[0] * by, a[1] * by];
const cross = (a: PicturePoint, b: PicturePoint): number => a[0] * b[1] - a[1] * b[0];
