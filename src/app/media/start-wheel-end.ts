import { US_RULE_SET } from '../../finding/rule-sets.ts';
import { work } from '../stores.ts';
import { newRecord } from '../work/new-record.ts';

/** Opens an empty record to put pictures into, and answers its id. */
export function startWheelEnd(unit = ''): string {
  const record = newRecord({
    newId: () => crypto.randomUUID(),
    createdAt: new Date().toISOString(),
    unit,
    ruleSetId: US_RULE_SET.id,
  });
  work.openRecord(record, { id: record.id, place: null });
  return record.id;
}
