import type { InspectionRecord } from '../../record/record.ts';
import { recordText } from '../../record/save-record.ts';
import { recordFileName } from '../words/file-names.ts';

/** Hands the record to the browser as a download. */
export function saveRecordFile(record: InspectionRecord): void {
  const address = URL.createObjectURL(new Blob([recordText(record)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = recordFileName(record);
  link.click();
  // The download reads the address after this turn; a minute is ample.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
