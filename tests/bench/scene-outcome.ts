/** What the engine makes of one scene, against its truth. */
import { decide } from '../../src/finding/decision.ts';
import { type Limit, limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';

export const LIMIT_MM = 50.8;

/** Warnings that call the number into doubt; the others only tell what was assumed. */
const DOUBTS: readonly string[] = [
  'measurement/marks-disagree',
  'measurement/mark-doubtful',
  'measurement/two-solutions',
  'measurement/distance-alone',
];

export type SceneOutcome = {
  /** right: within 3 U95 of the truth. */
  readonly verdict: 'right' | 'wrong-and-flagged' | 'wrong-and-silent' | 'refused';
  /** Code of the refusal, or the doubts raised. */
  readonly reasons: readonly string[];
  /** Error over U95; null where refused. */
  readonly offU95: number | null;
  readonly errorMm: number | null;
  readonly U95Mm: number | null;
  readonly pValue: number | null;
  readonly finding: 'within limit' | 'over limit' | 'not decided' | 'none';
  /** Why it is not decided. */
  readonly undecided: readonly string[];
};

const LIMIT = limitOf30();

export function outcomeOf(input: MeasureInput, strokeMm: number): SceneOutcome {
  const result = measure(input);
  if (!result.ok) {
    const none = { offU95: null, errorMm: null, U95Mm: null, pValue: null, undecided: [] };
    return { verdict: 'refused', reasons: [result.failure.code], finding: 'none', ...none };
  }
  const { strokeMm: measured, fit, warnings } = result.value;
  const errorMm = measured.value - strokeMm;
  const offU95 = Math.abs(errorMm) / measured.U95;
  const reasons = warnings.map(({ code }) => code).filter((code) => DOUBTS.includes(code));
  const wrong = reasons.length > 0 ? 'wrong-and-flagged' : 'wrong-and-silent';
  const finding = decide({
    measurement: result.value,
    limit: LIMIT,
    ruleSet: US_RULE_SET,
    sights: { released: null, applied: null },
  });
  return {
    // Not a number is wrong too.
    verdict: offU95 <= 3 ? 'right' : wrong,
    reasons,
    offU95,
    errorMm,
    U95Mm: measured.U95,
    pValue: fit.pValue,
    finding: finding.outcome,
    undecided: finding.reasons.map(({ code }) => code),
  };
}

function limitOf30(): Limit {
  const chamber = {
    family: 'clamp',
    type: '30',
    strokeClass: 'standard',
    ratedStrokeMm: null,
    markedLimitMm: null,
  } as const;
  const found = limitFor(chamber, US_RULE_SET);
  if (!found.ok) throw new Error(found.failure.code);
  return found.value;
}
