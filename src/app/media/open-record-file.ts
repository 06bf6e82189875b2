import { openRecord, RECORD_LIMIT_CHARACTERS } from '../../record/open-record.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { recordText } from '../../record/save-record.ts';
import type { KeptRecord } from '../storage/database.ts';
import { findRecord, listHeads } from '../storage/kept-records.ts';
import { hold, notices, savingSettled, work } from '../stores.ts';
import { captureFailureText } from '../words/failures-captures.ts';
import { recordFailureText } from '../words/failures-records.ts';
import { findFiles } from './find-files.ts';

/** A character is four bytes at most. */
const MOST_BYTES = 4 * RECORD_LIMIT_CHARACTERS;

/** Opens a saved record. When it does not open, the work at hand stays as it is. */
export async function openRecordFile(file: File): Promise<void> {
  const tell = (sentence: string) => notices.tell('record', sentence, file.name);
  // What can be no record is not read: its text would fill the memory.
  if (file.size > MOST_BYTES) {
    tell(
      recordFailureText({ code: 'record/too-large', characters: file.size, limit: RECORD_LIMIT_CHARACTERS }),
    );
    return;
  }
  const text = await file.text().catch(() => null);
  if (text === null) {
    tell(captureFailureText({ code: 'captures/not-readable', sizeBytes: file.size }));
    return;
  }
  const opened = openRecord(text);
  if (!opened.ok) {
    tell(recordFailureText(opened.failure));
    return;
  }
  await findFiles(opened.value);
  const kept = await keptFor(opened.value);
  await hold.fromOthers(kept.id);
  work.openRecord(opened.value, kept);
  notices.clear('record');
}

/** A file never takes the place of another state of the same record on this device: that one stays in the list. */
async function keptFor(
  record: InspectionRecord,
): Promise<Pick<KeptRecord, 'id'> & { place: KeptRecord['place'] | null }> {
  await savingSettled();
  const alike = await recordsOf(record.id);
  const text = recordText(record);
  const same = alike.find((kept) => JSON.stringify(kept.record) === JSON.stringify(JSON.parse(text)));
  if (same) return same;
  return { id: alike.length > 0 ? crypto.randomUUID() : record.id, place: null };
}

async function recordsOf(recordId: string): Promise<readonly KeptRecord[]> {
  const heads = await listHeads();
  const alike = heads.ok ? heads.value.filter((head) => head.recordId === recordId) : [];
  const found = await Promise.all(alike.map(({ id }) => findRecord(id)));
  return found.flatMap((kept) => (kept.ok && kept.value ? [kept.value] : []));
}
