/**
 * Defective brakes by stroke as the roadside criterion counts them, and their share of the vehicle's brakes.
 *
 * Rule     over the limit by the rule set's step or more: one; over by less: a half; within: none. The vehicle is past the criterion
 *          where the sum reaches the rule set's share of all brakes. What is not decided or not measured leaves a range.
 * Assumes  two brakes on each axle of the plan; strokes only, no other defect; this vehicle only, while the criterion counts the
 *          whole combination.
 * Fails    to say yes or no wherever the range, or a half that is left alone, allows both.
 * Source   the rule set's roadsideCount: second-hand, the current edition decides.
 */
import { mmFromInches } from '../basics/units.ts';
import { judge } from '../finding/guard-band.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import { isJudged } from './deciding.ts';
import type { PurposeResults } from './purpose-results.ts';
import type { Position } from './wheel-end.ts';

export type BrakeCount = {
  readonly position: Position;
  /** 0, a half or 1 each; the same where it is known. */
  readonly least: number;
  readonly most: number;
};

export type RoadsideShare = {
  readonly brakes: number;
  readonly least: number;
  readonly most: number;
  /** Share of the brakes from which the criterion is reached. */
  readonly criterionShare: number;
  readonly reached: 'yes' | 'no' | 'open';
  readonly counts: readonly BrakeCount[];
  /** Brakes with no stroke, or one that cannot be judged. */
  readonly unknown: readonly Position[];
  /** Id of the rule set's source. */
  readonly source: string;
};

export type BrakeResults = { readonly position: Position; readonly results: PurposeResults | null };

export function roadsideShare(brakes: readonly BrakeResults[], ruleSet: RuleSet): RoadsideShare {
  const counts = brakes.map(({ position, results }) => ({ position, ...countOf(results, ruleSet) }));
  const least = sum(counts.map((count) => count.least));
  const most = sum(counts.map((count) => count.most));
  const { shareOfBrakes: criterionShare, source } = ruleSet.roadsideCount;
  // A share that binary fractions put a hair above a whole number of brakes still counts as that number.
  const from = criterionShare * brakes.length - 1e-9;
  // A half left alone may or may not count: only whole brakes are sure.
  const isSure = brakes.length > 0 && Math.floor(least) >= from;
  const isOut = brakes.length === 0 || most < from;
  return {
    brakes: brakes.length,
    least,
    most,
    criterionShare,
    reached: isSure ? 'yes' : isOut ? 'no' : 'open',
    counts,
    unknown: counts.filter((count) => count.least === 0 && count.most === 1).map(({ position }) => position),
    source,
  };
}

function countOf(results: PurposeResults | null, ruleSet: RuleSet): { least: number; most: number } {
  const { finding = null, strokeMm = null, contradicted = false } = results ?? {};
  if (!finding || !strokeMm || contradicted || !isJudged(finding)) return { least: 0, most: 1 };
  if (finding.outcome === 'within limit') return { least: 0, most: 0 };
  const stepMm = mmFromInches(ruleSet.roadsideCount.wholeBrakeFromIn);
  const each = finding.judgements.map(({ limitMm, outcome }) => {
    const step = judge(strokeMm.value, strokeMm.u, limitMm + stepMm).outcome;
    return {
      least: outcome !== 'over limit' ? 0 : step === 'over limit' ? 1 : 0.5,
      most: outcome === 'within limit' ? 0 : step === 'within limit' ? 0.5 : 1,
    };
  });
  return {
    least: Math.min(...each.map(({ least }) => least)),
    most: Math.max(...each.map(({ most }) => most)),
  };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}
