/**
 * Released, applying, held, releasing: the course of a brake's travel told apart.
 *
 * Model    straight pieces of the curve (change-points.ts); a piece is at rest where it runs slower than 8 % of the whole travel in a
 *          second (a leak creeps at a few per cent, the softest application takes some seconds), or no farther than 6 % of it (a swaying
 *          camera sees as much); rests under a quarter of the travel are released, over six tenths held; all between two rests is one
 *          movement, a rest half way with it
 * Assumes  travel in any unit, growing as the brake is applied; gaps are left out: what lies on either side of one is joined
 * Fails    'clip/no-application' where the whole travel is not told from scatter, or under the least that is asked for; 'clip/too-short'
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { type Piece, type Sample, scatterOf, straightPieces } from './change-points.ts';
import type { ClipFailure, Phase } from './clip-measurement.ts';

export type TravelPoint = {
  /** Counted from the track's first. */
  readonly frame: number;
  readonly timeS: number;
  readonly travel: number;
  readonly u: number;
};

const REST_PER_S = 0.08;
const REST_SHARE = 0.06;
const RELEASED_BELOW = 0.25;
const HELD_ABOVE = 0.6;
const LEAST_FRAMES = 12;
/** A rest shorter than this is a turn of the movement. */
const LEAST_REST_S = 0.12;
/** Of the scatter: a travel under this is none. */
const TOLD = 10;
/** Share of the samples left out at either end when the whole travel is taken: a few wrong ones must not stretch it. */
const BEYOND = 0.02;
/** Finer than this the search takes long and tells no more. */
const MOST_SAMPLES = 3000;

export function phasesOf(
  points: readonly TravelPoint[],
  leastTravel: number,
): Result<readonly Phase[], ClipFailure> {
  if (points.length < LEAST_FRAMES)
    return fail({ code: 'clip/too-short', frames: points.length, needed: LEAST_FRAMES });
  const every = Math.ceil(points.length / MOST_SAMPLES);
  const used = points.filter((_point, i) => i % every === 0);
  const samples = used.map(({ timeS, travel }): Sample => ({ t: timeS, y: travel }));
  const u = Math.sqrt(used.reduce((sum, point) => sum + point.u ** 2, 0) / used.length);
  const sigma = Math.max(scatterOf(samples), u, 1e-9);
  const sorted = samples.map(({ y }) => y).sort((a, b) => a - b);
  const low = sorted[Math.floor(BEYOND * sorted.length)] as number;
  const high = sorted[Math.ceil((1 - BEYOND) * sorted.length) - 1] as number;
  const whole = high - low;
  if (whole < Math.max(leastTravel, TOLD * sigma))
    return fail({ code: 'clip/no-application', travelPx: whole, uPx: sigma });
  const rests = restsOf(straightPieces(samples, sigma), samples, { low, whole });
  if (rests.length === 0)
    return fail({ code: 'clip/too-short', frames: points.length, needed: LEAST_FRAMES });
  const frameOf = (sample: number) => (used[sample] as TravelPoint).frame;
  return ok(withMovements(rests, samples.length - 1, frameOf));
}

type Rest = { readonly kind: 'released' | 'held'; readonly from: number; readonly to: number };

function restsOf(
  pieces: readonly Piece[],
  samples: readonly Sample[],
  { low, whole }: { readonly low: number; readonly whole: number },
): readonly Rest[] {
  const rests: Rest[] = [];
  for (const { from, to, level, slope } of pieces) {
    const lasting = (samples[to] as Sample).t - (samples[from] as Sample).t;
    const perS = Math.abs(slope) / whole;
    if (perS > REST_PER_S && perS * lasting > REST_SHARE) continue;
    const share = (level + (slope * lasting) / 2 - low) / whole;
    const kind = share < RELEASED_BELOW ? 'released' : share > HELD_ABOVE ? 'held' : null;
    if (!kind) continue;
    const last = rests.at(-1);
    // Nothing but rest, or a short trembling, lies between.
    if (last && last.kind === kind && staysNear(samples, last.to, from, level, whole))
      rests[rests.length - 1] = { kind, from: last.from, to };
    else rests.push({ kind, from, to });
  }
  return rests.filter(
    ({ from, to }) => (samples[to] as Sample).t - (samples[from] as Sample).t >= LEAST_REST_S,
  );
}

/** Of the whole travel: between two rests of one kind the brake did not move if it never went farther than this. */
const NEAR = 0.15;

function staysNear(
  samples: readonly Sample[],
  from: number,
  to: number,
  level: number,
  whole: number,
): boolean {
  return samples.slice(from, to + 1).every(({ y }) => Math.abs(y - level) < NEAR * whole);
}

function withMovements(
  rests: readonly Rest[],
  last: number,
  frameOf: (sample: number) => number,
): readonly Phase[] {
  const phases: Phase[] = [];
  const add = (kind: Phase['kind'], from: number, to: number) => {
    if (from <= to) phases.push({ kind, from: frameOf(from), to: frameOf(to) });
  };
  for (const [i, rest] of rests.entries()) {
    const before = rests[i - 1];
    const begin = before ? before.to + 1 : 0;
    add(rest.kind === 'held' ? 'applying' : 'releasing', begin, rest.from - 1);
    add(rest.kind, rest.from, rest.to);
  }
  const end = rests.at(-1) as Rest;
  add(end.kind === 'held' ? 'releasing' : 'applying', end.to + 1, last);
  return phases;
}
