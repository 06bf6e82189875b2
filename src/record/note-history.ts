/**
 * Adds a line to the record's history. Work goes on in many small steps: a step like the one before it moves that line's time
 * and adds none. A sealed line is never touched.
 */
import type { HistoryEntry } from './history-entry.ts';
import type { InspectionRecord } from './record.ts';

export function noteHistory(
  record: InspectionRecord,
  { at, act, place }: Pick<HistoryEntry, 'at' | 'act' | 'place'>,
): InspectionRecord {
  const { history, inspector } = record;
  const entry = { at, by: inspector.name, act, place, stateSha256: null, chainSha256: null };
  const last = history.at(-1);
  const goesOn =
    last?.chainSha256 === null && last.act === act && last.place === place && last.by === inspector.name;
  return { ...record, history: [...(goesOn ? history.slice(0, -1) : history), entry] };
}
