import { canonicalJson } from '../basics/canonical-json.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import { findRuleSet } from '../finding/rule-sets.ts';
import type { Sha256OfText } from '../record/history-chain.ts';
import type { InspectionRecord } from '../record/record.ts';
import type { RuleSetUsed } from './manifest.ts';

/** Empty where the record names a rule set that this program does not hold: its findings are then not decided. */
export function ruleSetsUsed({ ruleSetId }: InspectionRecord, sha256: Sha256OfText): readonly RuleSetUsed[] {
  const found = findRuleSet(ruleSetId);
  return found.ok ? [ruleSetUsed(found.value, sha256)] : [];
}

function ruleSetUsed(ruleSet: RuleSet, sha256: Sha256OfText): RuleSetUsed {
  const { id, title, sources } = ruleSet;
  const editions = sources.map(({ citation, edition }) => `${citation}: ${edition}`);
  return { id, title, editions, sha256: sha256(canonicalJson(ruleSet)) };
}
