import type { InspectionRecord } from '../../record/record.ts';
import { recordText } from '../../record/save-record.ts';
import { saveFile } from '../parts/save-file.ts';
import { recordFileName } from '../words/file-names.ts';

export function saveRecordFile(record: InspectionRecord): void {
  saveFile(new Blob([recordText(record)], { type: 'application/json' }), recordFileName(record));
}
