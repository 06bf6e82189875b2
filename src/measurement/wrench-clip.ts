/**
 * A wrench followed through a clip, as pictures of the rests between the applications.
 *
 * Model    every released rest gives one picture: the frame whose direction of the wrench, against the arm where it is followed, is the
 *          middle one of the rest; its marks are made as unsure as the directions of the rest scatter: sigma = scatter x length / sqrt 2.
 *          Applications before it: the held phases that ended before.
 * Assumes  phases of the push rod's own motion (phases.ts); a rest at the clip's begin is before the first application
 * Fails    'wrench-clip/few-rests': fewer than two; a rest in which the wrench is not seen gives no picture. 'clip/seed-elsewhere': the pin
 *          rests away from where it was marked as the clip begins and as it ends, so it was marked with the brake applied: a clip of the
 *          wrench is filmed from before the first application until after the last
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Track } from '../marks/track.ts';
import type { ClipFailure, Phase } from './clip-measurement.ts';
import { phasesOf } from './phases.ts';
import { restingPart } from './resting-part.ts';
import { seedFrame } from './still-motion.ts';
import type { MarkedPoint, WrenchPicture } from './wrench-directions.ts';
import { wrenchTravel } from './wrench-travel.ts';

/** In one frame; null where it was not seen. */
export type WrenchSight = {
  readonly centre: MarkedPoint;
  readonly tip: MarkedPoint;
  readonly arm: WrenchPicture['arm'];
} | null;

export type WrenchRest = NonNullable<WrenchSight> & {
  readonly applicationsBefore: number;
  /** Counted as the phases are. */
  readonly frame: number;
};

export type WrenchClip = {
  readonly rests: readonly WrenchRest[];
  /** In the whole clip. */
  readonly applications: number;
  /** Before the seed frame. */
  readonly beforeSeed: number;
};

export type WrenchClipFailure =
  | ClipFailure
  | { readonly code: 'wrench-clip/few-rests'; readonly rests: number; readonly applications: number };

/** A pin that goes less far than this, over the arm's length, is not told from one that stands. */
const LEAST_TRAVEL = 0.03;

/** sights: of each frame of the track. */
export function wrenchOfClip(
  track: Track,
  sights: readonly WrenchSight[],
  ticksPerSecond: number,
): Result<WrenchClip, WrenchClipFailure> {
  const travel = wrenchTravel(track, ticksPerSecond);
  if (!travel.ok) return travel;
  const seed = seedFrame(track);
  const arm = sights[seed]?.arm;
  const armPx = arm ? Math.hypot(arm.pin.xPx - arm.camshaft.xPx, arm.pin.yPx - arm.camshaft.yPx) : 0;
  const phases = phasesOf(travel.value, LEAST_TRAVEL * armPx);
  if (!phases.ok) return phases;
  const isAwayAtBothEnds = [phases.value.find(isRest), phases.value.findLast(isRest)].every(
    (rest) => rest?.kind === 'held',
  );
  if (isAwayAtBothEnds) return fail({ code: 'clip/seed-elsewhere', state: 'released', phase: 'held' });
  const rests = wrenchRests(sights, phases.value);
  const applications = phases.value.filter(({ kind }) => kind === 'held').length;
  if (rests.length < 2) return fail({ code: 'wrench-clip/few-rests', rests: rests.length, applications });
  return ok({ rests, applications, beforeSeed: applicationsBefore(phases.value, seed) });
}

const isRest = ({ kind }: Phase) => kind === 'released' || kind === 'held';

export function applicationsBefore(phases: readonly Phase[], frame: number): number {
  return phases.filter(({ kind, to }) => kind === 'held' && to < frame).length;
}

export function wrenchRests(sights: readonly WrenchSight[], phases: readonly Phase[]): readonly WrenchRest[] {
  return phases.flatMap((phase) => {
    if (phase.kind !== 'released') return [];
    const { from, to } = restingPart(phase);
    const seen = sights.slice(from, to + 1).flatMap((sight, i) => {
      return sight ? [{ frame: from + i, sight, directionRad: directionOf(sight) }] : [];
    });
    const first = seen[0];
    if (!first) return [];
    // Within one rest nothing turns far: counted from the first of them there is no jump at half a turn.
    const turned = seen
      .map((each) => ({ ...each, turnRad: nearest(each.directionRad - first.directionRad) }))
      .sort((a, b) => a.turnRad - b.turnRad);
    const middle = turned[Math.floor(turned.length / 2)] as (typeof turned)[number];
    const scatterRad = Math.sqrt(
      turned.reduce((sum, { turnRad }) => sum + (turnRad - middle.turnRad) ** 2, 0) / turned.length,
    );
    const { centre, tip, arm } = middle.sight;
    const leastPx = (scatterRad * Math.hypot(tip.xPx - centre.xPx, tip.yPx - centre.yPx)) / Math.SQRT2;
    const unsure = (mark: MarkedPoint) => ({ ...mark, sigmaPx: Math.max(mark.sigmaPx, leastPx) });
    return [
      {
        applicationsBefore: applicationsBefore(phases, middle.frame),
        frame: middle.frame,
        centre: unsure(centre),
        tip: unsure(tip),
        arm,
      },
    ];
  });
}

function directionOf({ centre, tip, arm }: NonNullable<WrenchSight>): number {
  const wrench = Math.atan2(tip.yPx - centre.yPx, tip.xPx - centre.xPx);
  return arm ? wrench - Math.atan2(arm.pin.yPx - arm.camshaft.yPx, arm.pin.xPx - arm.camshaft.xPx) : wrench;
}

const nearest = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
