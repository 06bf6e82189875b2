import { keepCapture } from '../storage/kept-captures.ts';
import { media, notices } from '../stores.ts';
import { storageFailureText } from '../words/failures-storage.ts';

/** Keeps a capture's file for this visit, and on this device where there is room. */
export async function keepFile(sha256: string, file: Blob): Promise<void> {
  media.put(sha256, file);
  const kept = await keepCapture(sha256, file);
  if (!kept.ok) notices.tell('storage', storageFailureText(kept.failure));
}
