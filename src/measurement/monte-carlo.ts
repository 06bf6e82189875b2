/**
 * The uncertainty by trials: everything that was marked or taken as known is drawn anew, and the whole adjusted again.
 *
 * Model    each mark's coordinates, each prior and each other observation equation is drawn from a normal distribution about its
 *          stated value; the quantities are read off the adjustment of what was drawn; many trials give their distributions.
 *          As in the linear value (measure): standard deviations are the stated ones times the inflation of the fit, and a rival
 *          minimum has its share w: that share of the trials is moved by q_rival - q.
 *          Trial number i takes its draws from the same place of the stream whoever makes it: several workers that share the trials
 *          out come to the same as one.
 * Assumes  the adjustment of a trial is the minimum near the one found (displaced); a rival spreads like the minimum found.
 * Fails    as measure does; as joinedTrials.
 * Source   JCGM 101:2008, 7 (clause from memory).
 */

import { adjust } from '../adjustment/adjust.ts';
import type { Adjustment } from '../adjustment/adjustment.ts';
import { displacedFit } from '../adjustment/displaced.ts';
import type { Layout } from '../adjustment/layout.ts';
import { type RivalShare, rivalShares } from '../adjustment/rival-shares.ts';
import { byName } from '../basics/by-name.ts';
import { type Draw, drawFrom, UNIFORMS_OF_NORMAL } from '../basics/random.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import type { BrakeState } from '../marks/view.ts';
import { measurementOf } from './measure.ts';
import type { MeasureInput, MeasurementFailure } from './measurement.ts';
import {
  type DrawnTrials,
  joinedTrials,
  TRIAL_QUANTITIES,
  type TrialQuantity,
  type Trials,
  type TrialsFailure,
} from './monte-carlo-joined.ts';
import { problemFromViews } from './problem-from-views.ts';
import { armAngle, axialTravel } from './quantities.ts';

export type TrialsOptions = {
  /** At least a hundred. */
  readonly trials: number;
  readonly seed: number;
  readonly onProgress?: (done: number) => void;
};

/** from: number of the first trial, counted from 0; to: one past the last. */
export type SomeTrials = Pick<TrialsOptions, 'seed' | 'onProgress'> & {
  readonly from: number;
  readonly to: number;
};

const PROGRESS_EVERY = 100;

export function trialsOf(
  input: MeasureInput,
  { trials, ...rest }: TrialsOptions,
): Result<Trials, TrialsFailure> {
  return joinedTrials([drawnTrials(input, { ...rest, from: 0, to: trials })]);
}

export function drawnTrials(input: MeasureInput, some: SomeTrials): Result<DrawnTrials, MeasurementFailure> {
  const problem = problemFromViews(input);
  if (!problem.ok) return problem;
  const adjusted = adjust(problem.value);
  if (!adjusted.ok) return fail({ code: 'measurement/no-solution' });
  const measured = measurementOf(input, adjusted.value);
  if (!measured.ok) return measured;
  const drawn = drawnValues(adjusted.value, measured.value.fit.inflation, some);
  const quantities = byName(TRIAL_QUANTITIES, (name) => {
    const [stated, values] = [measured.value[name], drawn.get(name)];
    return stated && values ? { stated, values } : null;
  });
  return ok({
    asked: some.to - some.from,
    quantities,
  });
}

type Read = { readonly name: TrialQuantity; readonly of: (x: Float64Array) => number };

function readsOf(layout: Layout): readonly Read[] {
  const travel = (name: TrialQuantity, state: BrakeState): Read => ({
    name,
    of: (x) => axialTravel(x, layout, state).value,
  });
  const angle = (name: TrialQuantity, state: BrakeState): Read => ({
    name,
    of: (x) => armAngle(x, layout, state)?.value ?? Number.NaN,
  });
  return [
    travel('strokeMm', 'applied'),
    ...(layout.pins.pulled === undefined ? [] : [travel('freeStrokeMm', 'pulled')]),
    ...(layout.camshaft === null
      ? []
      : [angle('armAngleReleasedRad', 'released'), angle('armAngleAppliedRad', 'applied')]),
  ];
}

/** Of the trials that found a minimum. */
function drawnValues(
  adjustment: Adjustment,
  inflation: number,
  { from, to, seed, onProgress }: SomeTrials,
): ReadonlyMap<TrialQuantity, Float64Array> {
  const fit = displacedFit(adjustment);
  const reads = readsOf(adjustment.layout).map((read) => ({ ...read, values: new Float64Array(to - from) }));
  const rivals = rivalShares(adjustment);
  const displacements = new Float64Array(fit.observations);
  const uniformsOfTrial = UNIFORMS_OF_NORMAL * displacements.length + (rivals.length > 0 ? 1 : 0);
  const draw = drawFrom(seed, from * uniformsOfTrial);
  let solved = 0;
  for (let trial = from; trial < to; trial++) {
    if ((trial - from) % PROGRESS_EVERY === 0) onProgress?.(trial - from);
    for (let i = 0; i < displacements.length; i++) displacements[i] = draw.normal(0, inflation);
    const rival = rivalDrawn(rivals, draw);
    const x = fit.solve(displacements);
    if (!x) continue;
    for (const { of, values } of reads)
      values[solved] = of(x) + (rival ? of(rival.x) - of(adjustment.best.x) : 0);
    solved++;
  }
  return new Map(reads.map(({ name, values }) => [name, values.slice(0, solved)]));
}

/** null: the minimum found. */
function rivalDrawn(rivals: readonly RivalShare[], draw: Draw): RivalShare | null {
  if (rivals.length === 0) return null;
  let left = draw.uniform(0, 1);
  for (const rival of rivals) {
    left -= rival.share;
    if (left < 0) return rival;
  }
  return null;
}
