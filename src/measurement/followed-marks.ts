/** The marks that a track gives a frame. */
import type { Mark } from '../marks/mark.ts';
import { type FollowedKind, placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import type { View } from '../marks/view.ts';

/** Light and blur differ between frames, and pull all that is followed a little: measured on renders, docs/tracking.md. */
const LEAST_SIGMA_PX = 0.1;

/** Of the kinds named, as far as the frame shows them; each followed from its mark in the seed's view. */
export function followedMarks(
  track: Track,
  frame: number,
  seed: View,
  kinds: readonly Exclude<FollowedKind, 'still'>[],
): readonly Mark[] {
  return track.points.flatMap((point): Mark[] => {
    const from = seed.marks.find(({ id }) => id === point.markId);
    if (!from || point.kind === 'still' || !kinds.includes(point.kind)) return [];
    const placed = placedIn(track, point, frame);
    return placed ? [{ ...from, ...placed, followedFrom: from.id }] : [];
  });
}

export function tieMarks(track: Track, frame: number, ties: readonly TrackPoint[]): readonly Mark[] {
  return ties.flatMap((tie): Mark[] => {
    const placed = placedIn(track, tie, frame);
    return placed ? [{ kind: 'tie-point', tie: tie.markId, ...placed }] : [];
  });
}

function placedIn(track: Track, point: TrackPoint, frame: number) {
  const place = placeAt(point, frame);
  if (!place) return null;
  return {
    id: `${point.markId}@${track.firstIndex + frame}`,
    xPx: place.xPx,
    yPx: place.yPx,
    sigmaPx: Math.max(LEAST_SIGMA_PX, place.sigmaPx),
    placedBy: 'tracker' as const,
  };
}

export function frameView(track: Track, frame: number, state: View['state'], marks: readonly Mark[]): View {
  const timeTicks = track.timeTicks[frame] as number;
  return { state, captureId: track.captureId, frame: { index: track.firstIndex + frame, timeTicks }, marks };
}
