/** The marks that a track gives a frame. */
import type { Mark } from '../marks/mark.ts';
import { type FollowedKind, placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import type { View } from '../marks/view.ts';

/**
 * Light and blur differ between frames, and pull all that is followed a little; a graduation lies at a blade's edge with something else
 * behind it: measured on renders, docs/tracking.md.
 */
const LEAST_SIGMA_PX: Readonly<Record<FollowedKind, number>> = {
  still: 0.2,
  'clevis-pin': 0.1,
  'chamber-face': 0.1,
  'camshaft-end': 0.3,
  'tape-graduation': 0.3,
};

/** A blade is found anew as a whole: all its graduations in a frame are off alike, by up to 0.4 px on renders. So many marks of one
 * error are given that error's weight together. */
const BLADE_SIGMA_PX = 0.15;

/** The face is carried with what stands still about it, while the rod that leaves it there swivels by up to 3 mm: of the rod's length. */
const SWIVEL = 0.02;

/** Of the kinds named, as far as the frame shows them; each followed from its mark in the seed's view or in a correction. */
export function followedMarks(
  track: Track,
  frame: number,
  seed: View,
  kinds: readonly Exclude<FollowedKind, 'still'>[],
): readonly Mark[] {
  const faceSigma = SWIVEL * rodPxOf(seed);
  const hands = [...seed.marks, ...track.corrections.flatMap(({ marks }) => marks)];
  const graduations = track.points.filter(({ kind }) => kind === 'tape-graduation');
  const seen = graduations.filter((point) => placeAt(point, frame)).length;
  const shared: Partial<Record<FollowedKind, number>> = {
    'chamber-face': faceSigma,
    'tape-graduation': BLADE_SIGMA_PX * Math.sqrt(seen),
  };
  return track.points.flatMap((point): Mark[] => {
    const from = hands.find(({ id }) => id === point.markId);
    if (!from || point.kind === 'still' || !kinds.includes(point.kind)) return [];
    const placed = placedIn(track, point, frame);
    if (!placed) return [];
    const sigmaPx = Math.hypot(placed.sigmaPx, shared[point.kind] ?? 0);
    return [{ ...from, ...placed, sigmaPx, followedFrom: from.id }];
  });
}

/**
 * What the hand that put a frame right says of the thing itself. That frame is no view, as the brake may move in it: so the mark is taken
 * along, once, to the first view that shows what was followed from it.
 */
export function withCarriedHands(views: readonly View[], { corrections }: Track): readonly View[] {
  const hands = corrections.flatMap(({ marks }) => marks);
  const shows = (view: View, { id }: Mark) => view.marks.find(({ followedFrom }) => followedFrom === id);
  return views.map((view, i) => ({
    ...view,
    marks: [
      ...view.marks,
      ...hands.flatMap((hand): Mark[] => {
        const there = shows(view, hand);
        if (!there || views.slice(0, i).some((earlier) => shows(earlier, hand))) return [];
        const { xPx, yPx } = there;
        return [{ ...hand, id: `${there.id}+`, xPx, yPx, placedBy: 'tracker', carriedFrom: hand.id }];
      }),
    ],
  }));
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
    sigmaPx: Math.max(LEAST_SIGMA_PX[point.kind], place.sigmaPx),
    placedBy: 'tracker' as const,
  };
}

export function frameView(track: Track, frame: number, state: View['state'], marks: readonly Mark[]): View {
  const timeTicks = track.timeTicks[frame] as number;
  return { state, captureId: track.captureId, frame: { index: track.firstIndex + frame, timeTicks }, marks };
}

function rodPxOf({ marks }: View): number {
  const [face, pin] = ['chamber-face', 'clevis-pin'].map((kind) => marks.find((mark) => mark.kind === kind));
  return face && pin ? Math.hypot(pin.xPx - face.xPx, pin.yPx - face.yPx) : 0;
}
