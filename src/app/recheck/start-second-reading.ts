import { capturePath } from '../../evidence/package-path.ts';
import { blindRecord, blindRecordId } from '../../recheck/blind-record.ts';
import type { Recheck } from '../../recheck/recheck.ts';
import { keepCapture } from '../storage/kept-captures.ts';
import { hold, media, notices, work } from '../stores.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { recheck } from './recheck-store.ts';

/** Opens a record of the same frames without any marks, its pictures taken out of the package, as the work at hand. */
export async function startSecondReading(
  file: File,
  { record, manifestSha256, stored }: Recheck,
): Promise<void> {
  if (!record || manifestSha256 === null) return;
  for (const [i, capture] of record.captures.entries()) {
    const inside = stored.find(({ path }) => path === capturePath(i, capture));
    if (!inside) continue;
    const picture = file.slice(inside.from, inside.from + inside.sizeBytes, capture.mediaType);
    media.put(capture.sha256, picture);
    const kept = await keepCapture(capture.sha256, picture);
    if (!kept.ok) notices.tell('storage', storageFailureText(kept.failure));
  }
  const blind = blindRecord(record, manifestSha256, new Date().toISOString());
  const id = blindRecordId(manifestSha256);
  await hold.fromOthers(id);
  work.openRecord(blind, { id, place: null });
  recheck.close();
}
