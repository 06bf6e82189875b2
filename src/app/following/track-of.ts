/** The track of what was seen before, in and after the seed. */
import type { Mark } from '../../marks/mark.ts';
import type { Track, TrackPoint } from '../../marks/track.ts';
import type { View } from '../../marks/view.ts';
import type { FollowedSight, FrameSight } from '../../vision/follow-sight.ts';
import type { Point } from '../../vision/point.ts';
import type { FollowPlan } from './follow-plan.ts';
import type { Direction } from './follow-task.ts';

export type Seen = {
  readonly stills: readonly Point[];
  /** Of every frame of the clip. */
  readonly timeTicks: readonly number[];
  readonly sights: Readonly<Record<Direction, readonly FrameSight[]>>;
};

/** How well the seed's own place is known to itself. */
export const SEED_SIGMA_PX = 0.02;

export function trackOf(id: string, view: View, plan: FollowPlan, seen: Seen): Track | null {
  const { frame } = view;
  if (!frame) return null;
  const at = (placePx: Point): FollowedSight => ({ placePx, sigmaPx: SEED_SIGMA_PX });
  const seed: FrameSight = {
    things: plan.question.things.map(({ placePx }) => at(placePx)),
    stills: seen.stills.map(at),
    tape: plan.question.tape.map(({ placePx }) => at(placePx)),
  };
  const { forwards, backwards } = seen.sights;
  const sights = [...backwards.toReversed(), seed, ...forwards];
  const firstIndex = frame.index - backwards.length;
  return {
    id,
    captureId: view.captureId,
    state: view.state,
    seed: frame,
    firstIndex,
    timeTicks: seen.timeTicks.slice(firstIndex, firstIndex + sights.length),
    points: [
      ...plan.question.things.map(({ name }, i) =>
        columns(
          plan.kinds[i] ?? 'still',
          name,
          sights.map(({ things }) => things[i]),
        ),
      ),
      ...plan.tapeMarkIds.map((markId, i) =>
        columns(
          'tape-graduation',
          markId,
          sights.map(({ tape }) => tape[i]),
        ),
      ),
      ...seen.stills.map((_place, i) =>
        columns(
          'still',
          `s${i + 1}`,
          sights.map(({ stills }) => stills[i]),
        ),
      ),
    ],
  };
}

export function columns(
  kind: TrackPoint['kind'],
  markId: Mark['id'],
  sights: readonly (FrameSight['things'][number] | null | undefined)[],
): TrackPoint {
  const column = (of: (sight: FollowedSight) => number) =>
    sights.map((sight) => (sight && typeof sight !== 'string' ? Math.round(of(sight)) : null));
  return {
    kind,
    markId,
    xCentiPx: column(({ placePx }) => 100 * placePx[0]),
    yCentiPx: column(({ placePx }) => 100 * placePx[1]),
    sigmaMilliPx: column(({ sigmaPx }) => Math.max(1, 1000 * sigmaPx)),
  };
}
