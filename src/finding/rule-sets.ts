/** The rule sets that come with the program. */
import { assert, fail, ok, type Result } from '../basics/result.ts';
import { openRuleSet, type RuleSet, type RuleSetFailure } from './rule-set.ts';
import us49Cfr39347 from './rule-sets/us-49-cfr-393-47.json' with { type: 'json' };

/** 49 CFR 393.47(e). */
export const US_RULE_SET: RuleSet = shipped(us49Cfr39347);

export const RULE_SETS: readonly RuleSet[] = [US_RULE_SET];

export function findRuleSet(ruleSetId: string): Result<RuleSet, RuleSetFailure> {
  const ruleSet = RULE_SETS.find((candidate) => candidate.id === ruleSetId);
  return ruleSet ? ok(ruleSet) : fail({ code: 'rule-set/unknown', ruleSetId });
}

function shipped(data: unknown): RuleSet {
  const opened = openRuleSet(data);
  assert(opened.ok, `a rule set of ours is not valid: ${opened.ok ? '' : JSON.stringify(opened.failure)}`);
  return opened.value;
}
