/** What a simulated clip's measurement comes to beside its truth. */

import type { ClipMeasurement, Phase, Uncertain } from '../../src/measurement/clip-measurement.ts';
import { clipViews } from '../../src/measurement/clip-views.ts';
import { measure } from '../../src/measurement/measure.ts';
import { restingPart } from '../../src/measurement/resting-part.ts';
import { strokeOverTime } from '../../src/measurement/stroke-over-time.ts';
import { type ClipOptions, type ClipScene, simulateClip } from './clip-scene.ts';

/** An error with its expanded uncertainty, two u where only u is stated. */
export type Judged = { readonly error: number; readonly U: number };

export type ClipOutcome = {
  readonly failure: string | null;
  /** Of the two pictures. */
  readonly stroke: Judged | null;
  readonly applicationsFound: number;
  readonly applications: readonly Judged[];
  readonly ninety: readonly Judged[];
  readonly full: readonly Judged[];
  readonly release: readonly Judged[];
  readonly creep: readonly Judged[];
  readonly spread: Judged | null;
  /** Of single frames against the truth, less what all frames share. */
  readonly frames: readonly Judged[];
  readonly angles: readonly Judged[];
  /** Frames between a movement's begin and where it is told. */
  readonly boundaries: readonly number[];
  readonly stillScatter: number;
  readonly ms: number;
};

const NOTHING = {
  stroke: null,
  applicationsFound: 0,
  applications: [],
  ninety: [],
  full: [],
  release: [],
  creep: [],
  spread: null,
  frames: [],
  angles: [],
  boundaries: [],
  stillScatter: 0,
  ms: 0,
} as const;

export function outcomeOf(options: ClipOptions): ClipOutcome {
  const scene = simulateClip(options);
  const views = clipViews(scene.input, scene.track);
  if (!views.ok) return { ...NOTHING, failure: `views ${views.failure.code}` };
  const input = { ...scene.input, ...views.value };
  const two = measure(input);
  const begin = performance.now();
  const clip = strokeOverTime(input, scene.track);
  const ms = performance.now() - begin;
  if (!clip.ok || !two.ok) return { ...NOTHING, failure: `curve ${clip.ok ? '' : clip.failure.code}` };
  // Compared is with the part of the plateau that the view that was made stands for.
  const { applications, pictured } = clip.value;
  const own = applications[pictured ?? -1]?.phases.find(({ kind }) => kind === 'held');
  if (!own) return { ...NOTHING, failure: 'curve without the pictured application' };
  return {
    failure: null,
    stroke: {
      error: two.value.strokeMm.value - heldMm(scene.truth.travelMm, own),
      U: two.value.strokeMm.U95,
    },
    applicationsFound: clip.value.applications.length,
    ...judged(scene, clip.value),
    stillScatter: clip.value.stillScatter,
    ms,
  };
}

/** The mean travel of each application's held spell as far as the clip shows it. */
function heldOf({ truth }: ClipScene) {
  return truth.travel.applications.map((application) => {
    const inside = truth.times.flatMap((t, i) =>
      t >= application.begin && t <= application.letGo && truth.travel.heldMm(t) !== null
        ? [truth.travelMm[i] as number]
        : [],
    );
    return { ...application, strokeMm: inside.reduce((sum, mm) => sum + mm, 0) / inside.length };
  });
}

function judged(scene: ClipScene, { applications, curve, spreadMm }: ClipMeasurement) {
  const { times, travelMm, armAngleRad } = scene.truth;
  const held = heldOf(scene);
  const pairs = applications.flatMap((found) => {
    const phase = found.phases.find(({ kind }) => kind === 'held');
    const t = phase ? ((times[phase.from] as number) + (times[phase.to] as number)) / 2 : 0;
    const real = held.find(({ begin, letGo }) => t >= begin && t <= letGo);
    return real && phase ? [{ found, real, phase }] : [];
  });
  const times2 = (measured: Uncertain | null, truth: number | null): Judged[] =>
    measured && truth !== null ? [{ error: measured.value - truth, U: 2 * measured.u }] : [];
  const strokes = held.map(({ strokeMm }) => strokeMm);
  return {
    applications: pairs.map(({ found, phase }) => ({
      error: found.strokeMm.value - heldMm(travelMm, phase),
      U: found.strokeMm.U95,
    })),
    ninety: pairs.flatMap(({ found, real }) =>
      times2(found.toNinetyPercentS, between(scene, real, 0.02, 0.9)),
    ),
    full: pairs.flatMap(({ found, real }) => times2(found.toFullS, between(scene, real, 0.02, 0.98))),
    release: pairs.flatMap(({ found, real }) => times2(found.releaseS, released(scene, real))),
    creep: pairs.flatMap(({ found, phase }) => times2(found.creepMmPerS, slopeOf(scene, phase))),
    spread:
      spreadMm && pairs.length === held.length
        ? { error: spreadMm.value - (Math.max(...strokes) - Math.min(...strokes)), U: 2 * spreadMm.u }
        : null,
    frames: ofFramesAlone(
      curve.map(({ stroke }) => stroke),
      travelMm,
      travelMm,
    ),
    angles: ofFramesAlone(
      curve.map(({ armAngleRad: angle }) => angle),
      armAngleRad,
      travelMm,
    ),
    boundaries: pairs.flatMap(({ found, real }) =>
      found.phases.flatMap(({ kind, from }) => {
        const truth = kind === 'applying' ? real.begin : kind === 'releasing' ? real.letGo : null;
        if (truth === null) return [];
        return [from - times.findIndex((t) => t > truth)];
      }),
    ),
  };
}

/** Errors less what goes straight with the travel: what all frames share. Every 37th frame. */
function ofFramesAlone(
  found: readonly (Uncertain | null)[],
  truth: readonly number[],
  travelMm: readonly number[],
): readonly Judged[] {
  const seen = found.flatMap((one, i) =>
    one
      ? [{ frame: i, error: one.value - (truth[i] as number), U: 2 * one.u, x: travelMm[i] as number }]
      : [],
  );
  const [mx, me] = [meanOf(seen.map(({ x }) => x)), meanOf(seen.map(({ error }) => error))];
  const square = seen.reduce((sum, { x }) => sum + (x - mx) ** 2, 0);
  const slope = seen.reduce((sum, { x, error }) => sum + (x - mx) * (error - me), 0) / square;
  return seen
    .filter(({ frame }) => frame % 37 === 0)
    .map(({ error, U, x }) => ({ error: error - me - slope * (x - mx), U }));
}

function heldMm(travelMm: readonly number[], held: Phase): number {
  const { from, to } = restingPart(held);
  return meanOf(travelMm.slice(from, to + 1));
}

type Real = ReturnType<typeof heldOf>[number];

/** By bisection on the true travel, whose rests are 0 and the held mean. */
function between(
  { truth: { travel } }: ClipScene,
  { begin, letGo, strokeMm }: Real,
  from: number,
  to: number,
): number | null {
  if (begin < 0) return null;
  const passed = (share: number) => bisect((t) => travel.travelMm(t) - share * strokeMm, begin, letGo);
  return passed(to) - passed(from);
}

function released({ truth: { travel } }: ClipScene, { letGo, strokeMm }: Real): number | null {
  if (travel.lastingS <= letGo) return null;
  const next = travel.applications.find(({ begin }) => begin > letGo)?.begin ?? travel.lastingS;
  const passed = (share: number) => bisect((t) => share * strokeMm - travel.travelMm(t), letGo, next);
  return passed(0.05) - passed(0.98);
}

function bisect(value: (t: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2;
    if (value(middle) < 0) low = middle;
    else high = middle;
  }
  return high;
}

function slopeOf({ truth: { times, travelMm } }: ClipScene, held: Phase): number {
  const { from, to } = restingPart(held);
  const [t, y] = [times.slice(from, to + 1), travelMm.slice(from, to + 1)];
  const [mt, my] = [meanOf(t), meanOf(y)];
  const square = t.reduce((sum, each) => sum + (each - mt) ** 2, 0);
  return t.reduce((sum, each, i) => sum + (each - mt) * ((y[i] as number) - my), 0) / square;
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
