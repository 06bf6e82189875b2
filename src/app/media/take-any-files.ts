/**
 * The one door for files, however they come: a package is rechecked, a record file opens as a record, all else is tried as a picture.
 * Where no record is open, pictures begin one: that waits for the cautions.
 */
import { isPieceName, wholesOf } from '../../evidence/pieces.ts';
import { recheck } from '../recheck/recheck-store.ts';
import { cautions, choices, notices, work } from '../stores.ts';
import { piecesMissingText } from '../words/hand-over.ts';
import { openRecordFile } from './open-record-file.ts';
import { takePictures } from './take-pictures.ts';

/** Batches wait for each other: what was given first is not lost to what is given while it is read. */
let queue: Promise<void> = Promise.resolve();

export function takeAnyFiles(files: readonly File[]): Promise<void> {
  queue = queue.then(() => take(files)).catch(reportError);
  return queue;
}

/** Chosen to be rechecked: what is neither a package nor a record is told to be none, and is no picture to work on. */
export function takePackageFiles(files: readonly File[]): Promise<void> {
  const known = files.filter((file) => isPackageFile(file) || isRecordFile(file));
  if (known.length > 0) return takeAnyFiles(known);
  const [first] = files;
  if (first) void recheck.open(first);
  return Promise.resolve();
}

async function take(files: readonly File[]): Promise<void> {
  const evidence = packageOf(files.filter(isPackageFile));
  const [record] = files.filter(isRecordFile);
  const pictures = files.filter((file) => !isRecordFile(file) && !isPackageFile(file));
  // Beside the work at hand, which stays open behind it.
  if (evidence) void recheck.open(evidence);
  if (record) await openRecordFile(record);
  if (pictures.length === 0) return;
  const mayBegin = work.getState().open !== null || choices.getState().cautionsRead;
  if (mayBegin) await takePictures(pictures);
  else cautions.before(() => void takeAnyFiles(pictures));
}

/** The first package among them; one that came in pieces is put together. */
function packageOf(files: readonly File[]): File | null {
  const [first] = wholesOf(files, ({ name }) => name);
  if (!first) return null;
  if (first.ok) {
    const { name, pieces } = first.value;
    return pieces.length === 1 && pieces[0] ? pieces[0] : new File([...pieces], name);
  }
  notices.tell('pieces', piecesMissingText(first.failure), first.failure.name);
  return null;
}

function isRecordFile({ name, type }: File): boolean {
  return type === 'application/json' || name.toLowerCase().endsWith('.json');
}

function isPackageFile({ name, type }: File): boolean {
  return type === 'application/zip' || name.toLowerCase().endsWith('.zip') || isPieceName(name);
}
