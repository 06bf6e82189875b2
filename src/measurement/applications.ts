/**
 * The applications of a clip: each with its stroke, its times and its creep.
 *
 * Model    stroke      mean of the held frames less mean of the released ones before it (after it, where none is before);
 *                      u^2 = (u of the measurement, as a share of its stroke)^2 + u of both means^2. The measurement's own u holds
 *                      the frames of one plateau already: for that application a little is counted twice, never too little.
 *          times       from passing 2 % of the stroke to passing 90 % and 98 %; release from passing 98 % to passing 5 %
 *          creep       slope of the resting part of the held frames, by least squares
 *          u of means and slopes by how all rests of the clip scatter (rest-noise.ts)
 */
import type { Sample } from './change-points.ts';
import type { Application, CurvePoint, Phase, Uncertain } from './clip-measurement.ts';
import type { Measured } from './measured.ts';
import { K95 } from './measured-from.ts';
import { firstPassing, type Passing } from './passing.ts';
import { type RestNoise, restNoise, slopeWeights, uOfMean, uOfSlope } from './rest-noise.ts';
import { restingPart } from './resting-part.ts';

const BEGUN = 0.02;
const NINETY = 0.9;
const FULL = 0.98;
const BACK = 0.05;
const LEAST_FOR_CREEP = 8;
/** Frames. */
const MOST_LATE = 10;

export type FoundApplication = Application & {
  /** Of the stroke by the frames alone. */
  readonly uFramesMm: number;
};

export function applicationsOf(
  curve: readonly CurvePoint[],
  phases: readonly Phase[],
  measured: Measured,
): readonly FoundApplication[] {
  const rests = phases.filter(({ kind }) => kind === 'released' || kind === 'held');
  const noise = restNoise(rests.map((rest) => secondHalf(restOf(curve, rest))));
  return phases.flatMap((held, k): FoundApplication[] => {
    if (held.kind !== 'held') return [];
    const before = phases.slice(0, k).findLast(({ kind }) => kind === 'released');
    const after = phases.slice(k).find(({ kind }) => kind === 'released');
    const released = before ?? after;
    if (!released) return [];
    const [low, high] = [meanOf(curve, released, noise), meanOf(curve, held, noise)];
    const strokeMm = high.value - low.value;
    const uFramesMm = Math.hypot(low.u, high.u);
    const own = phases.slice(
      before ? phases.indexOf(before) : k,
      after ? phases.indexOf(after) + 1 : undefined,
    );
    return [
      {
        phases: own,
        strokeMm: scaled(measured, strokeMm, uFramesMm),
        uFramesMm,
        ...timesOf(curve, low, high, { before, held, after }),
        creepMmPerS: creepOf(curve, held, noise),
      },
    ];
  });
}

function restOf(curve: readonly CurvePoint[], phase: Phase): readonly (Sample & { readonly u: number })[] {
  const { from, to } = restingPart(phase);
  return curve
    .slice(from, to + 1)
    .flatMap(({ timeS, stroke }) => (stroke ? [{ t: timeS, y: stroke.value, u: stroke.u }] : []));
}

/** What is left of the movement before is no noise. */
const secondHalf = <T>(rest: readonly T[]): readonly T[] => rest.slice(Math.floor(rest.length / 2));

function meanOf(curve: readonly CurvePoint[], phase: Phase, noise: RestNoise): Uncertain {
  const rest = restOf(curve, phase);
  const own = Math.sqrt(rest.reduce((sum, { u }) => sum + u * u, 0)) / rest.length;
  return {
    value: rest.reduce((sum, { y }) => sum + y, 0) / rest.length,
    u: Math.max(own, uOfMean(rest, noise)),
  };
}

/** The measurement's uncertainty goes with the stroke's length: what all frames share is scale and direction of view. */
function scaled(measured: Measured, value: number, uFramesMm: number): Measured {
  const factor = measured.value > 0 ? Math.abs(value / measured.value) : 1;
  const u = Math.hypot(factor * measured.u, uFramesMm);
  const budget = measured.budget.map(({ group, u: part }) => ({
    group,
    u: group === 'marks' ? Math.hypot(factor * part, uFramesMm) : factor * part,
  }));
  return { value, u, U95: K95 * u, budget };
}

function timesOf(
  curve: readonly CurvePoint[],
  low: Uncertain,
  high: Uncertain,
  {
    before,
    held,
    after,
  }: { readonly before: Phase | undefined; readonly held: Phase; readonly after: Phase | undefined },
): Pick<Application, 'toNinetyPercentS' | 'toFullS' | 'releaseS'> {
  const passing = (range: { from: number; to: number }, share: number, way: 1 | -1) => {
    const value = low.value + share * (high.value - low.value);
    const level = { value, u: Math.hypot((1 - share) * low.u, share * high.u) };
    return firstPassing(curve, range, level, way, ({ stroke }) => stroke);
  };
  // A movement's begin may have been told a few frames late: it is looked for in the rest before, too.
  const lastOf = ({ from, to }: Phase) => Math.max(Math.ceil((from + to) / 2), to - MOST_LATE);
  const out = { from: before ? lastOf(before) : held.from, to: held.to };
  const back = { from: lastOf(held), to: after ? after.to : curve.length - 1 };
  const begun = before ? passing(out, BEGUN, 1) : null;
  const letGo = passing(back, FULL, -1);
  return {
    toNinetyPercentS: between(begun, passing(out, NINETY, 1)),
    toFullS: between(begun, passing(out, FULL, 1)),
    releaseS: after ? between(letGo, passing(back, BACK, -1)) : null,
  };
}

function between(from: Passing | null, to: Passing | null): Uncertain | null {
  return from && to && to.value > from.value
    ? { value: to.value - from.value, u: Math.hypot(from.u, to.u) }
    : null;
}

function creepOf(curve: readonly CurvePoint[], held: Phase, noise: RestNoise): Uncertain | null {
  const rest = restOf(curve, held);
  if (rest.length < LEAST_FOR_CREEP) return null;
  const weights = slopeWeights(rest);
  return {
    value: rest.reduce((sum, { y }, i) => sum + (weights[i] as number) * y, 0),
    u: uOfSlope(rest, noise),
  };
}
