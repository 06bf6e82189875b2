import { openRecord } from '../../record/open-record.ts';
import type { KeptRecord } from '../storage/database.ts';
import { notices, work } from '../stores.ts';
import { recordFailureText } from '../words/failures-records.ts';
import { findFiles } from './find-files.ts';

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
