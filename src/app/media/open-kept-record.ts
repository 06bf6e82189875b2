import { openRecord } from '../../record/open-record.ts';
import type { KeptRecord } from '../storage/database.ts';
import { findRecord } from '../storage/kept-records.ts';
import { notices, work } from '../stores.ts';
import { recordFailureText } from '../words/failures-records.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { findFiles } from './find-files.ts';

/** One of the list. */
export async function openListed(id: string): Promise<void> {
  const kept = await findRecord(id);
  if (!kept.ok) notices.tell('record', storageFailureText(kept.failure));
  else if (kept.value) await openKeptRecord(kept.value);
}

/** Opens what this device kept, where it was left. It passes the same door as a file: an older app may have written it. */
export async function openKeptRecord({ id, record, place }: KeptRecord): Promise<void> {
  const opened = openRecord(JSON.stringify(record));
  if (!opened.ok) {
    notices.tell('record', recordFailureText(opened.failure));
    return;
  }
  await findFiles(opened.value);
  work.openRecord(opened.value, { id, place });
}
