/**
 * What is drawn over one frame of a followed clip: a cross on each followed place, and the stroke as a dimension that has come as
 * far as the pin has, as the measurement has it (stroke-drawing.ts).
 *
 * Fails    a place that is not seen has no cross; without the pin there is no dimension.
 */
import {
  type FollowedKind,
  type FollowedPlace,
  placeAt,
  sharpestPlace,
  type Track,
} from '../../marks/track.ts';
import type { StrokeDrawing } from '../../measurement/measurement.ts';

export type Cross = { readonly kind: FollowedKind; readonly xPx: number; readonly yPx: number };

export type FollowLines = {
  readonly crosses: readonly Cross[];
  /** Followed things that are not seen in this frame. Of what stands still nothing is said, nor of the tape, which is looked for in some frames only. */
  readonly unseen: readonly FollowedKind[];
  readonly drawing: StrokeDrawing | null;
};

/** i counts from the track's first frame. */
export function followLines(track: Track, i: number, drawing: StrokeDrawing | null): FollowLines {
  const seen = [...stillsSeen(track, i), ...thingsSeen(track, i)];
  return {
    crosses: seen.flatMap(({ kind, place }) => (place ? [{ kind, xPx: place.xPx, yPx: place.yPx }] : [])),
    unseen: seen.filter(({ kind, place }) => !place && SAID.includes(kind)).map(({ kind }) => kind),
    drawing,
  };
}

type Seen = { readonly kind: FollowedKind; readonly place: FollowedPlace | null };

/** Looked for in every frame, each as one. */
const SAID: readonly FollowedKind[] = ['clevis-pin', 'chamber-face', 'camshaft-end'];

const stillsSeen = ({ points }: Track, i: number): readonly Seen[] =>
  points
    .filter(({ kind }) => kind === 'still')
    .map((point) => ({ kind: point.kind, place: placeAt(point, i) }));

/** Each graduation is one; of face, pin and camshaft several spots may be followed, and one cross says where it is. */
function thingsSeen(track: Track, i: number): readonly Seen[] {
  const graduations = track.points.filter(({ kind }) => kind === 'tape-graduation');
  const kinds = new Set(track.points.map(({ kind }) => kind));
  return [
    ...SAID.filter((kind) => kinds.has(kind)).map(
      (kind): Seen => ({ kind, place: sharpestPlace(track, kind, i) }),
    ),
    ...graduations.map((point): Seen => ({ kind: point.kind, place: placeAt(point, i) })),
  ];
}
