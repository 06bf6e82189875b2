import { openRecord } from '../../record/open-record.ts';
import { notices, work } from '../session.ts';
import { RECORD_WITHOUT_WHEEL_END, recordFailureText } from '../words/failures-records.ts';
import { findFiles } from './find-files.ts';

/** Opens a saved record. When it does not open, the work at hand stays as it is. */
export async function openRecordFile(file: File): Promise<void> {
  const opened = openRecord(await file.text());
  if (!opened.ok) {
    notices.tell('record', recordFailureText(opened.failure), file.name);
    return;
  }
  await findFiles(opened.value);
  if (work.openRecord(opened.value)) notices.clear('record');
  else notices.tell('record', RECORD_WITHOUT_WHEEL_END, file.name);
}
