/** What to follow from a frame that was put right: the marks that a hand set there, both ways to the next frames marked by hand. */
import { anchorsAbout } from '../../marks/joined-track.ts';
import { type Correction, FOLLOWED_KINDS, type Track, type TrackPoint } from '../../marks/track.ts';
import type { View } from '../../marks/view.ts';
import { type FollowPlan, followPlan } from './follow-plan.ts';
import { marksInFrame } from './places-in-frame.ts';
import { columns, type Seen, sightsInOrder } from './track-of.ts';

export type CorrectionPlan = FollowPlan & {
  /** Frames of the clip. */
  readonly within: { readonly from: number; readonly to: number };
};

/** seed: the view that the track was followed from. Null where that has no face or pin. */
export function correctionPlan(
  track: Track,
  seed: View,
  { frame, marks }: Correction,
): CorrectionPlan | null {
  const others = marksInFrame(track, seed, frame.index - track.firstIndex).filter(
    ({ kind }) => !marks.some((mark) => mark.kind === kind),
  );
  const inFrame = { ...seed, frame, marks: [...marks, ...others] };
  // The brake may be anywhere on its way here: as far out as from released, as far back as from applied.
  const [out, back] = (['released', 'applied'] as const).map((state) => followPlan({ ...inFrame, state }));
  if (!out || !back) return null;
  const asked = out.question.things
    .map((thing, i) => ({ thing, kind: out.kinds[i] }))
    .filter(({ thing }) => marks.some(({ id }) => id === thing.name));
  const kinds = asked.flatMap(({ kind }) => kind ?? []);
  return {
    question: {
      ...out.question,
      things: asked.map(({ thing }) => thing),
      tape: [],
      reachPx: { out: out.question.reachPx.out, back: back.question.reachPx.back },
    },
    kinds,
    tapeMarkIds: [],
    within: framesToFollow(track, kinds, frame.index),
  };
}

function framesToFollow(track: Track, kinds: readonly TrackPoint['kind'][], index: number) {
  const end = track.firstIndex + track.timeTicks.length;
  const anchors = kinds.map((kind) => anchorsAbout(track, kind, index - track.firstIndex));
  const from = Math.min(...anchors.map(({ before }) => track.firstIndex + (before ?? 0)), index);
  const to = Math.max(
    ...anchors.map(({ after }) => (after === null ? end : track.firstIndex + after + 1)),
    index + 1,
  );
  return { from, to };
}

/** As long as the track, with gaps where nothing was looked at. */
export function pointsOf(track: Track, plan: FollowPlan, seen: Seen, index: number): readonly TrackPoint[] {
  const sights = sightsInOrder(seen, plan.question.things, []);
  const begin = index - seen.sights.backwards.length - track.firstIndex;
  return plan.question.things.map(({ name }, i) =>
    columns(
      plan.kinds[i] ?? FOLLOWED_KINDS[0],
      name,
      track.timeTicks.map((_ticks, frame) => sights[frame - begin]?.things[i]),
    ),
  );
}
