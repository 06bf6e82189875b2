import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { CameraProfile } from '../../captures/camera-profile.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { KeptFollowing } from '../following/kept-following.ts';
import type { Place } from '../work/place.ts';
import { headOf, type KeptHead } from './kept-head.ts';

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
  heads: { key: string; value: KeptHead };
  captures: { key: string; value: KeptCapture };
  /** Which record was open: there again after a crash. */
  open: { key: 'record'; value: string };
  cameras: { key: string; value: CameraProfile };
  followings: { key: string; value: KeptFollowing };
  keys: { key: 'signing'; value: CryptoKeyPair };
}

const NAME = 'strokewitness';
const VERSION = 5;

let opening: Promise<IDBPDatabase<Kept>> | null = null;

export function database(): Promise<IDBPDatabase<Kept>> {
  opening ??= openDB<Kept>(NAME, VERSION, {
    async upgrade(db, from, _to, transaction) {
      if (from < 1) {
        db.createObjectStore('records', { keyPath: 'id' });
        db.createObjectStore('captures', { keyPath: 'sha256' });
        db.createObjectStore('open');
      }
      if (from < 2) db.createObjectStore('cameras', { keyPath: 'id' });
      if (from < 3) db.createObjectStore('followings', { keyPath: 'key' });
      if (from < 4) {
        const heads = db.createObjectStore('heads', { keyPath: 'id' });
        for (const kept of await transaction.objectStore('records').getAll())
          await heads.put(headOfOlder(kept));
      }
      if (from < 5) db.createObjectStore('keys');
    },
    /** A newer app in another tab wants to upgrade: it would wait for this page without end. */
    blocking(_ours, _theirs, event) {
      (event.target as IDBDatabase).close();
      opening = null;
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

/** An older app wrote records that lack what a head shows by now. */
function headOfOlder(kept: KeptRecord): KeptHead {
  const { record } = kept;
  const older: { readonly inspector?: InspectionRecord['inspector'] } = record;
  const inspector = older.inspector ?? { name: '', qualification: '' };
  const wheelEnds = record.wheelEnds.map((wheelEnd) => ({
    ...wheelEnd,
    handReadings: wheelEnd.handReadings ?? [],
  }));
  return headOf({ ...kept, record: { ...record, inspector, wheelEnds } }, null);
}
