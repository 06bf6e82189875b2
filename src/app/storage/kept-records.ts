import type { Result } from '../../basics/result.ts';
import { database, type KeptRecord } from './database.ts';
import type { PartingNote } from './parting-note.ts';
import { attempt, type StorageFailure } from './storage-failure.ts';

export function keepRecord(kept: KeptRecord): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    const transaction = (await database()).transaction(['records', 'open'], 'readwrite');
    await Promise.all([
      transaction.objectStore('records').put(kept),
      transaction.objectStore('open').put(kept.id, 'record'),
      transaction.done,
    ]);
  });
}

export function listRecords(): Promise<Result<readonly KeptRecord[], StorageFailure>> {
  return attempt(async () => {
    const all = await (await database()).getAll('records');
    return all.sort((a, b) => b.savedAt.localeCompare(a.savedAt));
  });
}

/** The record that was open when the page went away, if one was. */
export function lastOpenRecord(): Promise<Result<KeptRecord | null, StorageFailure>> {
  return attempt(async () => {
    const db = await database();
    const id = await db.get('open', 'record');
    return (id && (await db.get('records', id))) || null;
  });
}

/** Takes in what was written as the page went away, unless what the database has was saved later. */
export function takeInNote({ unwritten, openId }: PartingNote): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    const transaction = (await database()).transaction(['records', 'open'], 'readwrite');
    const records = transaction.objectStore('records');
    for (const kept of unwritten) {
      const before = await records.get(kept.id);
      if (!before || before.savedAt <= kept.savedAt) await records.put(kept);
    }
    const open = transaction.objectStore('open');
    await (openId === null ? open.delete('record') : open.put(openId, 'record'));
    await transaction.done;
  });
}

export function noRecordOpen(): Promise<Result<void, StorageFailure>> {
  return attempt(async () => (await database()).delete('open', 'record'));
}

export function dropRecord(id: string): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    const db = await database();
    await db.delete('records', id);
    await dropUnusedCaptures();
  });
}

async function dropUnusedCaptures(): Promise<void> {
  const transaction = (await database()).transaction(['records', 'captures'], 'readwrite');
  const records = await transaction.objectStore('records').getAll();
  const used = new Set(records.flatMap(({ record }) => record.captures.map(({ sha256 }) => sha256)));
  const captures = transaction.objectStore('captures');
  const keys = await captures.getAllKeys();
  await Promise.all(keys.filter((key) => !used.has(key)).map((key) => captures.delete(key)));
  await transaction.done;
}
