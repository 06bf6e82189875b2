/**
 * The applications of a clip: each with its stroke, its times and its creep.
 *
 * Model    stroke      mean of the held frames less mean of the released ones before it (after it, where none is before);
 *                      u^2 = (u of the measurement, as a share of its stroke)^2 + u of both means^2. The measurement's own u holds
 *                      the frames of one plateau already: for that application a little is counted twice, never too little.
 *          times       from passing 2 % of the stroke to passing 90 % and 98 %; release from passing 98 % to passing 5 %
 *          creep       slope of the held frames but the first fifth, by least squares; its u widened as a mean's (plateau-mean.ts)
 */
import type { Application, CurvePoint, Phase, Uncertain } from './clip-measurement.ts';
import type { Measured } from './measured.ts';
import { K95 } from './measured-from.ts';
import { firstPassing, type Passing } from './passing.ts';
import { plateauMean } from './plateau-mean.ts';

const BEGUN = 0.02;
const NINETY = 0.9;
const FULL = 0.98;
const BACK = 0.05;
const SETTLING_SHARE = 0.2;
const LEAST_FOR_CREEP = 8;

export type FoundApplication = Application & {
  /** Of the stroke by the frames alone. */
  readonly uFramesMm: number;
};

export function applicationsOf(
  curve: readonly CurvePoint[],
  phases: readonly Phase[],
  measured: Measured,
): readonly FoundApplication[] {
  return phases.flatMap((held, k): FoundApplication[] => {
    if (held.kind !== 'held') return [];
    const before = phases.slice(0, k).findLast(({ kind }) => kind === 'released');
    const after = phases.slice(k).find(({ kind }) => kind === 'released');
    const released = before ?? after;
    if (!released) return [];
    const [low, high] = [meanOf(curve, released), meanOf(curve, held)];
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
        ...timesOf(curve, low.value, strokeMm, { before, held, after }),
        creepMmPerS: creepOf(curve, held),
      },
    ];
  });
}

function meanOf(curve: readonly CurvePoint[], { from, to }: Phase): Uncertain {
  const seen = curve.slice(from, to + 1).flatMap(({ stroke }) => stroke ?? []);
  return plateauMean(
    seen.map(({ value }) => value),
    seen.map(({ u }) => u),
  );
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
  lowMm: number,
  strokeMm: number,
  {
    before,
    held,
    after,
  }: { readonly before: Phase | undefined; readonly held: Phase; readonly after: Phase | undefined },
): Pick<Application, 'toNinetyPercentS' | 'toFullS' | 'releaseS'> {
  const passing = (range: { from: number; to: number }, share: number, way: 1 | -1) =>
    firstPassing(curve, range, lowMm + share * strokeMm, way, ({ stroke }) => stroke);
  const out = { from: before?.to ?? held.from, to: held.to };
  const back = { from: held.to, to: after ? after.to : curve.length - 1 };
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

function creepOf(curve: readonly CurvePoint[], { from, to }: Phase): Uncertain | null {
  const begin = from + Math.ceil(SETTLING_SHARE * (to - from));
  const seen = curve
    .slice(begin, to + 1)
    .flatMap(({ timeS, stroke }) => (stroke ? [{ t: timeS, y: stroke.value, u: stroke.u }] : []));
  if (seen.length < LEAST_FOR_CREEP) return null;
  const mt = seen.reduce((sum, { t }) => sum + t, 0) / seen.length;
  const square = seen.reduce((sum, { t }) => sum + (t - mt) ** 2, 0);
  const slope = seen.reduce((sum, { t, y }) => sum + (t - mt) * y, 0) / square;
  const off = seen.map(({ t, y }) => y - slope * (t - mt));
  const { u } = plateauMean(
    off,
    seen.map((each) => each.u),
  );
  return { value: slope, u: u * Math.sqrt(seen.length / square) };
}
