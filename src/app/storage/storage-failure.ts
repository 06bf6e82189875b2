import { fail, ok, type Result } from '../../basics/result.ts';

export type StorageFailure =
  | { readonly code: 'storage/refused' }
  | { readonly code: 'storage/full'; readonly sizeBytes: number };

/** Runs one piece of work on the browser's storage; whatever the browser throws becomes a failure. */
export async function attempt<T>(work: () => Promise<T>, sizeBytes = 0): Promise<Result<T, StorageFailure>> {
  try {
    return ok(await work());
  } catch (thrown) {
    const full = thrown instanceof DOMException && thrown.name === 'QuotaExceededError';
    return full ? fail({ code: 'storage/full', sizeBytes }) : fail({ code: 'storage/refused' });
  }
}
