/** The bytes of photos and clips, by their SHA-256: the same file in two records is kept once. */
import type { Result } from '../../basics/result.ts';
import { database } from './database.ts';
import { attempt, type StorageFailure } from './storage-failure.ts';

export function keepCapture(sha256: string, file: Blob): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    await (await database()).put('captures', { sha256, file });
    // Asks the browser not to clear it away when room gets short; it may say no, and the work is kept all the same.
    void navigator.storage?.persist?.();
  }, file.size);
}

export function findCapture(sha256: string): Promise<Result<Blob | null, StorageFailure>> {
  return attempt(async () => (await (await database()).get('captures', sha256))?.file ?? null);
}
