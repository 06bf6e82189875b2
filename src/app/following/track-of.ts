/** The track of what was seen before, in and after the seed. */
import type { Mark } from '../../marks/mark.ts';
import type { Track, TrackPoint } from '../../marks/track.ts';
import type { View } from '../../marks/view.ts';
import type { FollowedSight, FrameSight } from '../../vision/follow-sight.ts';
import type { FollowState } from '../../vision/follow-state.ts';
import type { Point } from '../../vision/point.ts';
import type { FollowPlan } from './follow-plan.ts';
import type { Direction } from './follow-task.ts';

export type Seen = {
  readonly stills: readonly Point[];
  /** Of every frame of the clip. */
  readonly timeTicks: readonly number[];
  readonly sights: Readonly<Record<Direction, readonly FrameSight[]>>;
};

/** states: of both followers after that, from which they go on. */
export type SeenSoFar = Seen & { readonly states: Readonly<Record<Direction, FollowState | null>> };

/** How well the seed's own place is known to itself. */
const SEED_SIGMA_PX = 0.02;

export function trackOf(id: string, view: View, plan: FollowPlan, seen: Seen): Track | null {
  const { frame: seed, captureId, state } = view;
  if (!seed) return null;
  const { things, tape } = plan.question;
  const sights = sightsInOrder(seen, things, tape);
  return trackOfSights({ id, captureId, state, seed }, seen, sights, [
    ...things.map(({ name }, i) =>
      columns(
        plan.kinds[i] ?? 'still',
        name,
        sights.map((sight) => sight.things[i]),
      ),
    ),
    ...plan.tapeMarkIds.map((markId, i) =>
      columns(
        'tape-graduation',
        markId,
        sights.map((sight) => sight.tape[i]),
      ),
    ),
  ]);
}

type Placed = { readonly placePx: Point };

/** Those before the seed, the seed's own, those after it. */
export function sightsInOrder(
  { stills, sights: { forwards, backwards } }: Seen,
  things: readonly Placed[],
  tape: readonly Placed[],
): readonly FrameSight[] {
  const at = (placePx: Point): FollowedSight => ({ placePx, sigmaPx: SEED_SIGMA_PX });
  const atOf = ({ placePx }: Placed) => at(placePx);
  const seed: FrameSight = { things: things.map(atOf), stills: stills.map(at), tape: tape.map(atOf) };
  return [...backwards.toReversed(), seed, ...forwards];
}

/** points: of what was asked for; what stands still is added. */
export function trackOfSights(
  of: Pick<Track, 'id' | 'captureId' | 'state' | 'seed'>,
  seen: Seen,
  sights: readonly FrameSight[],
  points: readonly TrackPoint[],
): Track {
  const firstIndex = of.seed.index - seen.sights.backwards.length;
  const stills = seen.stills.map((_place, i) =>
    columns(
      'still',
      `s${i + 1}`,
      sights.map((sight) => sight.stills[i]),
    ),
  );
  return {
    ...of,
    corrections: [],
    firstIndex,
    timeTicks: seen.timeTicks.slice(firstIndex, firstIndex + sights.length),
    points: [...points, ...stills],
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
