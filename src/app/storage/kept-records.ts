import type { Result } from '../../basics/result.ts';
import { database, type KeptRecord } from './database.ts';
import { headOf, type KeptHead } from './kept-head.ts';
import type { PartingNote } from './parting-note.ts';
import { attempt, type StorageFailure } from './storage-failure.ts';

export function keepRecord(kept: KeptRecord): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    const transaction = (await database()).transaction(['records', 'heads', 'open'], 'readwrite');
    const heads = transaction.objectStore('heads');
    const before = await heads.get(kept.id);
    await Promise.all([
      transaction.objectStore('records').put(kept),
      heads.put(headOf(kept, before?.strokes ?? null)),
      transaction.objectStore('open').put(kept.id, 'record'),
      transaction.done,
    ]);
  });
}

/** Newest first. */
export function listHeads(): Promise<Result<readonly KeptHead[], StorageFailure>> {
  return attempt(async () => {
    const all = await (await database()).getAll('heads');
    return all.sort((a, b) => b.savedAt.localeCompare(a.savedAt));
  });
}

export function findRecord(id: string): Promise<Result<KeptRecord | null, StorageFailure>> {
  return attempt(async () => (await (await database()).get('records', id)) ?? null);
}

export function findHead(id: string): Promise<Result<KeptHead | null, StorageFailure>> {
  return attempt(async () => (await (await database()).get('heads', id)) ?? null);
}

export function keepStrokes(
  id: string,
  strokes: NonNullable<KeptHead['strokes']>,
): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    const heads = (await database()).transaction('heads', 'readwrite').store;
    const head = await heads.get(id);
    if (head) await heads.put({ ...head, strokes });
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
    const transaction = (await database()).transaction(['records', 'heads', 'open'], 'readwrite');
    const records = transaction.objectStore('records');
    const heads = transaction.objectStore('heads');
    for (const kept of unwritten) {
      const before = await records.get(kept.id);
      if (before && before.savedAt > kept.savedAt) continue;
      await records.put(kept);
      await heads.put(headOf(kept, (await heads.get(kept.id))?.strokes ?? null));
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
    await Promise.all([db.delete('records', id), db.delete('heads', id)]);
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
