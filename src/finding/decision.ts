/**
 * The finding: what a measured stroke says against the limit.
 *
 * Rule     the guard band of guard-band.ts, against every limit that is still possible: a finding is given only where they
 *          agree. It stays not decided, whatever the number, where
 *          - the marks disagree so strongly that the fit's chi-square has a p-value under 1e-6: the widening of u by the
 *            disagreement assumes a model that holds, and here it does not;
 *          - one mark contradicts the others by more than luck would have it in a lifetime of inspections: it is likely on the
 *            wrong place, and it may have pulled the stroke with it;
 *          - one known distance is the only scale of two hand-held pictures: U95 holds there in 88 of 100 cases only
 *            (docs/accuracy.md), which is no ground for a finding;
 *          - the marks allow a second stroke that would be found otherwise;
 *          - there is no measured stroke or no limit.
 *          The decision rule stands before the measurement and looks at nothing else.
 */
import type { WithU } from '../measurement/measured.ts';
import type { Fit, Measurement, MeasurementFailure, MeasurementWarning } from '../measurement/measurement.ts';
import { type Judgement, judge, type Outcome } from './guard-band.ts';
import type { Limit, LimitFailure } from './limit.ts';
import { type OverStrokeMarkNote, overStrokeMarkNotes, type Sights } from './over-stroke-mark.ts';
import { type RoadsideCountNote, roadsideCount } from './roadside-count.ts';
import type { RuleSet, RuleSetFailure } from './rule-set.ts';

export type Finding = {
  readonly outcome: Outcome;
  readonly limit: Limit | null;
  /** Against each possible limit, lowest first; empty where the stroke cannot be judged at all. */
  readonly judgements: readonly Judgement[];
  /** Why it is not decided; empty where it is. */
  readonly reasons: readonly UndecidedReason[];
  readonly notes: readonly FindingNote[];
};

export type UndecidedReason =
  /** A limit lies within the guard band: measure by hand. */
  | { readonly code: 'finding/near-limit'; readonly limitMm: number }
  | { readonly code: 'finding/editions-differ' }
  | { readonly code: 'finding/chamber-ambiguous' }
  | { readonly code: 'finding/limit-unknown'; readonly failure: LimitFailure | RuleSetFailure }
  | { readonly code: 'finding/model-does-not-hold'; readonly pValue: number }
  | { readonly code: 'finding/distance-alone' }
  | { readonly code: 'finding/views-apart' }
  | { readonly code: 'finding/mark-contradicts'; readonly standardisedResidual: number }
  | { readonly code: 'finding/two-solutions'; readonly otherStrokeMm: number }
  /** The reading by tape measure, decided on its own, says the opposite. */
  | { readonly code: 'finding/hand-contradicts'; readonly handStrokeMm: number }
  | { readonly code: 'finding/not-measured'; readonly failure: MeasurementFailure };

export type FindingNote = OverStrokeMarkNote | RoadsideCountNote;

/** Far below what honest marks give by chance, even over a lifetime of measurements; above it, u is widened instead. */
const MODEL_HOLDS_FROM_P = 1e-6;

/** Of sixty good marks one is off by this many of its own standard deviations once in fifteen thousand measurements. */
const MARK_HOLDS_TO = 5;

export type Case = {
  readonly measurement: Pick<Measurement, 'strokeMm' | 'fit' | 'warnings'>;
  readonly limit: Limit;
  readonly ruleSet: RuleSet;
  readonly sights: Sights;
};

export function decide({ measurement, limit, ruleSet, sights }: Case): Finding {
  const { strokeMm: stroke, fit } = measurement;
  if (!(fit.pValue >= MODEL_HOLDS_FROM_P))
    return undecided({ code: 'finding/model-does-not-hold', pValue: fit.pValue }, limit);

  const judgements = judgementsOf(stroke, limit);
  const [lowest] = judgements;
  const reasons = [
    ...reasonsAgainst(judgements, limit),
    ...contradictingMark(fit),
    ...weakGeometry(measurement),
    ...secondSolutions(measurement, judgements),
  ];
  const outcome = reasons.length === 0 ? lowest.outcome : 'not decided';
  const nearest = outcome === 'over limit' ? (judgements.at(-1) ?? lowest) : lowest;
  const notes: FindingNote[] = overStrokeMarkNotes(sights, stroke, { ...nearest, outcome }, ruleSet);
  if (outcome === 'over limit') notes.push(roadsideCount(stroke, limitsOf(limit), ruleSet));
  return { outcome, limit, judgements, reasons, notes };
}

/** A stroke by tape measure: the same guard band against every possible limit, and nothing of pictures. */
export function decideByHand(stroke: WithU, limit: Limit, ruleSet: RuleSet): Finding {
  const judgements = judgementsOf(stroke, limit);
  const reasons = reasonsAgainst(judgements, limit);
  const outcome = reasons.length === 0 ? judgements[0].outcome : 'not decided';
  const notes = outcome === 'over limit' ? [roadsideCount(stroke, limitsOf(limit), ruleSet)] : [];
  return { outcome, limit, judgements, reasons, notes };
}

export function undecided(reason: UndecidedReason, limit: Limit | null): Finding {
  return { outcome: 'not decided', limit, judgements: [], reasons: [reason], notes: [] };
}

function judgementsOf({ value, u }: WithU, limit: Limit): readonly [Judgement, ...Judgement[]] {
  const [lowest, ...others] = limitsOf(limit);
  return [judge(value, u, lowest), ...others.map((limitMm) => judge(value, u, limitMm))];
}

function limitsOf({ values: [lowest, ...others] }: Limit): readonly [number, ...number[]] {
  return [lowest.limitMm, ...others.map(({ limitMm }) => limitMm)];
}

function reasonsAgainst(judgements: readonly Judgement[], limit: Limit): UndecidedReason[] {
  const reasons: UndecidedReason[] = judgements
    .filter((judgement) => judgement.outcome === 'not decided')
    .map(({ limitMm }) => ({ code: 'finding/near-limit', limitMm }));
  const differ = new Set(judgements.map((judgement) => judgement.outcome)).size > 1;
  if (differ && limit.openBecause !== null) reasons.push({ code: `finding/${limit.openBecause}` });
  return reasons;
}

function contradictingMark({ worstMark }: Fit): UndecidedReason[] {
  if (!worstMark || worstMark.standardisedResidual <= MARK_HOLDS_TO) return [];
  return [{ code: 'finding/mark-contradicts', standardisedResidual: worstMark.standardisedResidual }];
}

/** Kinds of measurement whose stated uncertainty is known not to hold often enough (docs/accuracy.md, docs/outside.md). */
function weakGeometry({ warnings }: Case['measurement']): UndecidedReason[] {
  const has = (warning: MeasurementWarning['code']): boolean => warnings.some(({ code }) => code === warning);
  return [
    ...(has('measurement/distance-alone') ? [{ code: 'finding/distance-alone' } as const] : []),
    ...(has('measurement/views-apart') ? [{ code: 'finding/views-apart' } as const] : []),
  ];
}

function secondSolutions(
  { strokeMm: stroke, warnings }: Case['measurement'],
  judgements: readonly Judgement[],
): UndecidedReason[] {
  return warnings
    .filter((warning) => warning.code === 'measurement/two-solutions')
    .filter(({ otherStrokeMm }) =>
      judgements.some(({ limitMm, outcome }) => judge(otherStrokeMm, stroke.u, limitMm).outcome !== outcome),
    )
    .map(({ otherStrokeMm }) => ({ code: 'finding/two-solutions', otherStrokeMm }));
}
