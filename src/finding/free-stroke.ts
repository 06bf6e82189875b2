/**
 * Free stroke of a drum brake against the usual setting.
 *
 * Rule     short where it is under the least, long where it is over what any known maker allows, in range between least and most,
 *          each proven by the guard band; not decided otherwise, as between the most of one maker and that of another.
 * Source   the rule set's freeStroke.
 */
import { mmFromInches } from '../basics/units.ts';
import type { WithU } from '../measurement/measured.ts';
import { judge } from './guard-band.ts';
import type { RuleSet } from './rule-set.ts';

export type FreeStrokeRange = 'short' | 'in range' | 'long' | 'not decided';

export type FreeStrokeBounds = {
  readonly leastMm: number;
  readonly mostMm: number;
  readonly mostElsewhereMm: number;
};

export function freeStrokeBounds({ freeStroke }: RuleSet): FreeStrokeBounds {
  return {
    leastMm: mmFromInches(freeStroke.leastIn),
    mostMm: mmFromInches(freeStroke.mostIn),
    mostElsewhereMm: mmFromInches(freeStroke.mostElsewhereIn),
  };
}

export function freeStrokeRange({ value, u }: WithU, ruleSet: RuleSet): FreeStrokeRange {
  const { leastMm, mostMm, mostElsewhereMm } = freeStrokeBounds(ruleSet);
  const against = (boundMm: number) => judge(value, u, boundMm).outcome;
  if (against(leastMm) === 'within limit') return 'short';
  if (against(mostElsewhereMm) === 'over limit') return 'long';
  return against(leastMm) === 'over limit' && against(mostMm) === 'within limit' ? 'in range' : 'not decided';
}

/** A setting that was written down, without an uncertainty: taken at its word, to half a sixteenth of an inch. */
export function setFreeStrokeRange(setMm: number, ruleSet: RuleSet): FreeStrokeRange {
  const { leastMm, mostMm, mostElsewhereMm } = freeStrokeBounds(ruleSet);
  if (setMm < leastMm - READ_TO_MM) return 'short';
  if (setMm > mostElsewhereMm + READ_TO_MM) return 'long';
  return setMm <= mostMm + READ_TO_MM ? 'in range' : 'not decided';
}

const READ_TO_MM = mmFromInches(1 / 32);
