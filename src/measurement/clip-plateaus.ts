/**
 * Between which rests of a clip the stroke is taken: that of the marked frame, and one of the other state.
 *
 * Model    of the other state's rests that with the longest travel, the safe side: by pixels as long as there is no scale, then by
 *          millimetres; pixels are off by some hundredths where the phone moves
 * Fails    'clip/seed-elsewhere', 'clip/one-state'
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Track } from '../marks/track.ts';
import type { View } from '../marks/view.ts';
import type { Application, ClipFailure, ClipMeasurement, Phase } from './clip-measurement.ts';
import type { Poses } from './frame-poses.ts';
import type { TravelPoint } from './phases.ts';
import { restingPart } from './resting-part.ts';
import { seedFrame } from './still-motion.ts';

/** Applications that differ by less count as one as long as the other. */
const ALIKE_MM = 0.2;

type Others = readonly [Phase, ...Phase[]];

/** The plateau that the seed is in, and those of the other state, that with the longest travel from it first. */
export function plateausOf(
  phases: readonly Phase[],
  points: readonly TravelPoint[],
  track: Track,
): Result<{ readonly own: Phase; readonly others: Others }, ClipFailure> {
  const kind = track.state === 'released' ? 'released' : 'held';
  const seed = seedFrame(track);
  const own = phases.find(({ from, to }) => from <= seed && seed <= to) ?? null;
  if (own?.kind !== kind)
    return fail({ code: 'clip/seed-elsewhere', state: track.state, phase: own?.kind ?? null });
  const meanOf = ({ from, to }: Phase) => {
    const inside = points.filter(({ frame }) => frame >= from && frame <= to);
    return inside.reduce((sum, { travel }) => sum + travel, 0) / inside.length;
  };
  const travelOf = (phase: Phase) => Math.abs(meanOf(phase) - meanOf(own));
  const [first, ...rest] = phases
    .filter((phase) => phase.kind === (kind === 'held' ? 'released' : 'held'))
    .sort((a, b) => travelOf(b) - travelOf(a));
  if (!first) return fail({ code: 'clip/one-state', phase: kind });
  return ok({ own, others: [first, ...rest] });
}

/** In millimetres, as adjusted; the first one where none is told to be longer. */
export function longestOf(poses: Poses, own: Phase, others: Others): Phase {
  const meanMm = (phase: Phase) => {
    const { from, to } = restingPart(phase);
    const pins = poses.slice(from, to + 1).flatMap((pose) => pose?.pin ?? []);
    return pins.reduce((sum, { xMm }) => sum + xMm, 0) / pins.length;
  };
  const from = meanMm(own);
  const travelMm = (phase: Phase) => Math.abs(meanMm(phase) - from);
  return others.reduce((best, each) => (travelMm(each) > travelMm(best) + ALIKE_MM ? each : best));
}

/** Counted from the clip's first application. */
export function picturedOf(
  views: readonly View[],
  { firstIndex }: Track,
  applications: readonly Application[],
): Pick<ClipMeasurement, 'pictured' | 'longer'> {
  const frame = (views.find(({ state }) => state === 'applied')?.frame?.index ?? -1) - firstIndex;
  const pictured = applications.findIndex(({ phases }) =>
    phases.some(({ kind, from, to }) => kind === 'held' && from <= frame && frame <= to),
  );
  const lengthOf = (at: number) => applications[at]?.strokeMm.value ?? 0;
  const longest = [...applications.keys()].reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a), 0);
  if (pictured < 0) return { pictured: null, longer: null };
  return { pictured, longer: lengthOf(longest) > lengthOf(pictured) + ALIKE_MM ? longest : null };
}
