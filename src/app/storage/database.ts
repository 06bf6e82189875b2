import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { InspectionRecord } from '../../record/record.ts';
import type { Place } from '../work/place.ts';

export type KeptRecord = {
  /** Of the keeping: two copies of one record are two of these. */
  readonly id: string;
  readonly savedAt: string;
  /** As it was written. It is read through the record's own door like a file: an older app may have written it. */
  readonly record: InspectionRecord;
  readonly place: Place;
};

export type KeptCapture = { readonly sha256: string; readonly file: Blob };

interface Kept extends DBSchema {
  records: { key: string; value: KeptRecord };
  captures: { key: string; value: KeptCapture };
  /** Which record was open: there again after a crash. */
  open: { key: 'record'; value: string };
}

const NAME = 'strokewitness';
const VERSION = 1;

let opening: Promise<IDBPDatabase<Kept>> | null = null;

export function database(): Promise<IDBPDatabase<Kept>> {
  opening ??= openDB<Kept>(NAME, VERSION, {
    upgrade(db) {
      db.createObjectStore('records', { keyPath: 'id' });
      db.createObjectStore('captures', { keyPath: 'sha256' });
      db.createObjectStore('open');
    },
    terminated() {
      opening = null;
    },
  });
  opening.catch(() => {
    opening = null;
  });
  return opening;
}
