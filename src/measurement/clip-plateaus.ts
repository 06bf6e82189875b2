/**
 * Between which rests of a clip the stroke is taken: that of the marked frame, and one of the other state.
 *
 * Model    of the other state's rests that with the longest travel, the safe side: by pixels as long as there is no scale, then by
 *          millimetres; pixels are off by some hundredths where the phone moves. So too a marked frame that pixels take for the end of a movement
 *          into the rest beside it, or its beginning, from nearly where it rests: it belongs to that rest if millimetres say so
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

/** Of the travel between rests, by pixels, that a swaying phone may leave between a frame and its rest. */
const SWAY_SHARE = 0.15;
/** A marked frame that is farther from its rest is none of it. */
const MOVED_MM = 0.5;

type Others = readonly [Phase, ...Phase[]];

type Plateaus = {
  readonly own: Phase;
  readonly others: Others;
};

/** The plateau of the seed, and those of the other state, that with the longest travel from it first. */
export function plateausOf(
  phases: readonly Phase[],
  points: readonly TravelPoint[],
  track: Track,
): Result<Plateaus, ClipFailure> {
  const kind = track.state === 'released' ? 'released' : 'held';
  const meanOf = ({ from, to }: Phase) => meanTravel(points, from, to);
  const own = ownOf(phases, points, seedFrame(track), kind);
  if (!own) return seedElsewhere(phases, track);
  const travelOf = (phase: Phase) => Math.abs(meanOf(phase) - meanOf(own));
  const [first, ...rest] = phases
    .filter((phase) => phase.kind === (kind === 'held' ? 'released' : 'held'))
    .sort((a, b) => travelOf(b) - travelOf(a));
  if (!first) return fail({ code: 'clip/one-state', phase: kind });
  return ok({ own, others: [first, ...rest] });
}

/** The rest that the seed is in, or else one beside its piece and no farther off than sway makes. */
function ownOf(
  phases: readonly Phase[],
  points: readonly TravelPoint[],
  seed: number,
  kind: Phase['kind'],
): Phase | null {
  const at = phases.findIndex(({ from, to }) => from <= seed && seed <= to);
  if (phases[at]?.kind === kind) return phases[at];
  const means = phases.map(({ from, to }) => meanTravel(points, from, to));
  const near = SWAY_SHARE * (Math.max(...means) - Math.min(...means));
  const travel = meanTravel(points, seed, seed);
  const beside = [at - 1, at + 1].find(
    (i) => phases[i]?.kind === kind && Math.abs((means[i] as number) - travel) < near,
  );
  return beside === undefined ? null : (phases[beside] as Phase);
}

function meanTravel(points: readonly TravelPoint[], from: number, to: number): number {
  const inside = points.filter(({ frame }) => frame >= from && frame <= to);
  return inside.reduce((sum, { travel }) => sum + travel, 0) / inside.length;
}

export function seedElsewhere(phases: readonly Phase[], track: Track) {
  const seed = seedFrame(track);
  const phase = phases.find(({ from, to }) => from <= seed && seed <= to)?.kind ?? null;
  return fail({ code: 'clip/seed-elsewhere', state: track.state, phase });
}

/** A marked frame outside of the rest that pixels tell: is its pin, by millimetres, where it rests? */
export function restsThere(poses: Poses, own: Phase, seed: number): boolean {
  if (own.from <= seed && seed <= own.to) return true;
  const there = poses[seed]?.pin?.xMm;
  return there !== undefined && Math.abs(there - meanMm(poses, own)) < MOVED_MM;
}

/** In millimetres, as adjusted; the first one where none is told to be longer. */
export function longestOf(poses: Poses, own: Phase, others: Others): Phase {
  const from = meanMm(poses, own);
  const travelMm = (phase: Phase) => Math.abs(meanMm(poses, phase) - from);
  return others.reduce((best, each) => (travelMm(each) > travelMm(best) + ALIKE_MM ? each : best));
}

function meanMm(poses: Poses, phase: Phase): number {
  const { from, to } = restingPart(phase);
  const pins = poses.slice(from, to + 1).flatMap((pose) => pose?.pin ?? []);
  return pins.reduce((sum, { xMm }) => sum + xMm, 0) / pins.length;
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
