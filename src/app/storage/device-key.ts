/** The device's own signing key: made with the first package, kept in the browser; its private half cannot be taken out. */
import type { Result } from '../../basics/result.ts';
import { KEY_ALGORITHM } from '../../evidence/signature.ts';
import { database } from './database.ts';
import { attempt, type StorageFailure } from './storage-failure.ts';

export function deviceKey(): Promise<Result<CryptoKeyPair, StorageFailure>> {
  return attempt(async () => {
    const db = await database();
    const kept = await db.get('keys', 'signing');
    if (kept) return kept;
    const made = await crypto.subtle.generateKey(KEY_ALGORITHM, false, ['sign', 'verify']);
    const transaction = db.transaction('keys', 'readwrite');
    // Another tab may have been quicker: the first key stays.
    const first = await transaction.store.get('signing');
    if (!first) await transaction.store.put(made, 'signing');
    await transaction.done;
    return first ?? made;
  });
}
