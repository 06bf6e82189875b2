/** The one door for files, however they come: a record file opens as a record, everything else is tried as a picture. */
import { openRecordFile } from './open-record-file.ts';
import { takePictures } from './take-pictures.ts';

/** Batches wait for each other: what was given first is not lost to what is given while it is read. */
let queue: Promise<void> = Promise.resolve();

export function takeAnyFiles(files: readonly File[]): Promise<void> {
  queue = queue.then(() => take(files)).catch(reportError);
  return queue;
}

async function take(files: readonly File[]): Promise<void> {
  const [record] = files.filter(isRecordFile);
  const pictures = files.filter((file) => !isRecordFile(file));
  if (record) await openRecordFile(record);
  if (pictures.length > 0) await takePictures(pictures);
}

function isRecordFile({ name, type }: File): boolean {
  return type === 'application/json' || name.toLowerCase().endsWith('.json');
}
