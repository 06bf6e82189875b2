/**
 * The uncertainty by trials: everything that was marked or taken as known is drawn anew, and the whole adjusted again.
 *
 * Model    each mark's coordinates, each prior and each other observation equation is drawn from a normal distribution about its
 *          stated value; the quantities are read off the adjustment of what was drawn; many trials give their distributions.
 *          As in the linear value (measure): standard deviations are the stated ones times the inflation of the fit, and a rival
 *          minimum has its share w: that share of the trials is moved by q_rival - q.
 * Assumes  the adjustment of a trial is the minimum near the one found (displaced); a rival spreads like the minimum found.
 * Fails    as measure does; monte-carlo/trials-lost: more trials found no minimum than lie beyond one end of the interval,
 *          which would make that end unknown.
 * Source   JCGM 101:2008, 7 (clause from memory).
 */
import { adjust } from '../adjustment/adjust.ts';
import type { Adjustment } from '../adjustment/adjustment.ts';
import { displacedFit } from '../adjustment/displaced.ts';
import type { Layout } from '../adjustment/layout.ts';
import { type RivalShare, rivalShares } from '../adjustment/rival-shares.ts';
import { type Draw, drawFrom } from '../basics/random.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { degFromRad } from '../basics/units.ts';
import type { BrakeState } from '../marks/view.ts';
import { measure } from './measure.ts';
import type { Measured } from './measured.ts';
import type { MeasureInput, MeasurementFailure } from './measurement.ts';
import { type Agreement, agreementOf } from './monte-carlo-agreement.ts';
import { summaryOf, type TrialSummary } from './monte-carlo-summary.ts';
import { problemFromViews } from './problem-from-views.ts';
import { armAngle, axialTravel } from './quantities.ts';

export type TrialResult = TrialSummary & {
  /** Expanded uncertainty at 95 % about the stated value: it reaches the farther end of the symmetric interval. */
  readonly U95: number;
  /** The larger of the stated U95 and this one: what to rely on where they do not agree. */
  readonly largerU95: number;
  readonly agreement: Agreement;
};

type TrialQuantity = 'strokeMm' | 'freeStrokeMm' | 'armAngleReleasedRad' | 'armAngleAppliedRad';

export type Trials = {
  readonly asked: number;
  /** Those that found no minimum; they are not in the results. */
  readonly lost: number;
  /** null as in the measurement. */
  readonly results: Readonly<Record<TrialQuantity, TrialResult | null>>;
};

export type TrialsFailure =
  | MeasurementFailure
  | { readonly code: 'monte-carlo/trials-lost'; readonly lost: number; readonly asked: number };

export type TrialsOptions = {
  /** At least a hundred. */
  readonly trials: number;
  readonly seed: number;
  readonly onProgress?: (done: number) => void;
};

export const USUAL_TRIALS = 10_000;
/** What lies beyond one end of a symmetric 95 % interval. */
const MOST_LOST_SHARE = 0.025;
const PROGRESS_EVERY = 100;

export function trialsOf(input: MeasureInput, options: TrialsOptions): Result<Trials, TrialsFailure> {
  const measured = measure(input);
  if (!measured.ok) return measured;
  const problem = problemFromViews(input);
  const adjusted = problem.ok ? adjust(problem.value) : problem;
  if (!adjusted.ok) return fail({ code: 'measurement/no-solution' });
  const drawn = drawnValues(adjusted.value, measured.value.fit.inflation, options);
  const asked = options.trials;
  const lost = asked - drawn.solved;
  if (lost > MOST_LOST_SHARE * asked) return fail({ code: 'monte-carlo/trials-lost', lost, asked });
  const result = (name: TrialQuantity): TrialResult | null => {
    const stated = measured.value[name];
    const values = drawn.values.get(name)?.subarray(0, drawn.solved);
    return stated && values ? resultOf(stated, values, name.endsWith('Rad') ? degFromRad(1) : 1) : null;
  };
  return ok({
    asked,
    lost,
    results: {
      strokeMm: result('strokeMm'),
      freeStrokeMm: result('freeStrokeMm'),
      armAngleReleasedRad: result('armAngleReleasedRad'),
      armAngleAppliedRad: result('armAngleAppliedRad'),
    },
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

/** The first so many of each array are solved ones. */
function drawnValues(
  adjustment: Adjustment,
  inflation: number,
  { trials, seed, onProgress }: TrialsOptions,
): { readonly values: ReadonlyMap<TrialQuantity, Float64Array>; readonly solved: number } {
  const fit = displacedFit(adjustment);
  const reads = readsOf(adjustment.layout).map((read) => ({ ...read, values: new Float64Array(trials) }));
  const rivals = rivalShares(adjustment);
  const draw = drawFrom(seed);
  const displacements = new Float64Array(fit.observations);
  let solved = 0;
  for (let trial = 0; trial < trials; trial++) {
    if (trial % PROGRESS_EVERY === 0) onProgress?.(trial);
    for (let i = 0; i < displacements.length; i++) displacements[i] = draw.normal(0, inflation);
    const rival = rivalDrawn(rivals, draw);
    const x = fit.solve(displacements);
    if (!x) continue;
    for (const { of, values } of reads)
      values[solved] = of(x) + (rival ? of(rival.x) - of(adjustment.best.x) : 0);
    solved++;
  }
  return { values: new Map(reads.map(({ name, values }) => [name, values])), solved };
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

function resultOf(stated: Measured, values: Float64Array, perUnit: number): TrialResult {
  const summary = summaryOf(values);
  const { low, high } = summary.symmetric;
  const U95 = Math.max(stated.value - low, high - stated.value);
  const agreement = agreementOf(stated, summary, { perUnit });
  return { ...summary, U95, largerU95: Math.max(U95, stated.U95), agreement };
}
