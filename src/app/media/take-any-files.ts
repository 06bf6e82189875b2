/** The one door for files, however they come: a record file opens as a record, everything else is tried as a picture. */
import { openRecordFile } from './open-record-file.ts';
import { takePictures } from './take-pictures.ts';

let running = new AbortController();

export async function takeAnyFiles(files: readonly File[]): Promise<void> {
  running.abort();
  running = new AbortController();
  const { signal } = running;
  const records = files.filter(isRecordFile);
  const pictures = files.filter((file) => !isRecordFile(file));
  const [record] = records;
  if (record) await openRecordFile(record);
  if (pictures.length > 0) await takePictures(pictures, signal);
}

function isRecordFile({ name, type }: File): boolean {
  return type === 'application/json' || name.toLowerCase().endsWith('.json');
}
