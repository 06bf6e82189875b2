import { US_RULE_SET } from '../../finding/rule-sets.ts';
import { work } from '../session.ts';
import { newRecord } from '../work/new-record.ts';

/** Opens an empty record to put pictures into. */
export function startWheelEnd(unit = ''): void {
  work.openRecord(
    newRecord({
      newId: () => crypto.randomUUID(),
      createdAt: new Date().toISOString(),
      unit,
      ruleSetId: US_RULE_SET.id,
    }),
  );
}
