/**
 * Trials, made in one piece or in several, to what they say of every quantity beside its stated value.
 *
 * Fails    as the first part that failed; monte-carlo/trials-lost: more trials found no minimum than lie beyond one end of the
 *          interval, which would make that end unknown.
 */
import { byName } from '../basics/by-name.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { degFromRad } from '../basics/units.ts';
import type { Measured } from './measured.ts';
import type { MeasurementFailure } from './measurement.ts';
import { type Agreement, agreementOf } from './monte-carlo-agreement.ts';
import { summaryOf, type TrialSummary } from './monte-carlo-summary.ts';

export type TrialResult = TrialSummary & {
  /** Expanded uncertainty at 95 % about the stated value: it reaches the farther end of the symmetric interval. */
  readonly U95: number;
  /** The larger of the stated U95 and this one: what to rely on where they do not agree. */
  readonly largerU95: number;
  readonly agreement: Agreement;
};

export const TRIAL_QUANTITIES = [
  'strokeMm',
  'freeStrokeMm',
  'armAngleReleasedRad',
  'armAngleAppliedRad',
] as const;
export type TrialQuantity = (typeof TRIAL_QUANTITIES)[number];

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

/** Some of the trials: their values, the lost ones left out. */
export type DrawnTrials = {
  readonly asked: number;
  readonly quantities: Readonly<
    Record<TrialQuantity, { readonly stated: Measured; readonly values: Float64Array } | null>
  >;
};

export const USUAL_TRIALS = 10_000;
/** What lies beyond one end of a symmetric 95 % interval. */
const MOST_LOST_SHARE = 0.025;

/** parts: in the order of the trials; one at least. */
export function joinedTrials(
  parts: readonly Result<DrawnTrials, MeasurementFailure>[],
): Result<Trials, TrialsFailure> {
  const drawn: DrawnTrials[] = [];
  for (const part of parts) {
    if (!part.ok) return part;
    drawn.push(part.value);
  }
  const asked = drawn.reduce((sum, part) => sum + part.asked, 0);
  const solved = drawn.reduce((sum, { quantities }) => sum + (quantities.strokeMm?.values.length ?? 0), 0);
  const lost = asked - solved;
  if (lost > MOST_LOST_SHARE * asked) return fail({ code: 'monte-carlo/trials-lost', lost, asked });
  return ok({ asked, lost, results: byName(TRIAL_QUANTITIES, (name) => resultOf(name, drawn)) });
}

function resultOf(name: TrialQuantity, drawn: readonly DrawnTrials[]): TrialResult | null {
  const parts = drawn.flatMap(({ quantities }) => quantities[name] ?? []);
  const stated = parts[0]?.stated;
  if (!stated) return null;
  const summary = summaryOf(Float64Array.from(parts.flatMap(({ values }) => [...values])));
  const { low, high } = summary.symmetric;
  const U95 = Math.max(stated.value - low, high - stated.value);
  const agreement = agreementOf(stated, summary, { perUnit: name.endsWith('Rad') ? degFromRad(1) : 1 });
  return { ...summary, U95, largerU95: Math.max(U95, stated.U95), agreement };
}
