import type { Result } from '../../basics/result.ts';
import { openRecord } from '../../record/open-record.ts';
import type { KeptRecord } from '../storage/database.ts';
import { dropDrafts } from '../storage/drafts.ts';
import { dropRecord, findRecord } from '../storage/kept-records.ts';
import type { StorageFailure } from '../storage/storage-failure.ts';
import { hold, notices, work } from '../stores.ts';
import { unitText } from '../words/en.ts';
import { recordFailureText } from '../words/failures-records.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { TABS } from '../words/tabs.ts';
import { findFiles } from './find-files.ts';

/** One of the list. */
export async function openListed(id: string): Promise<void> {
  await hold.fromOthers(id);
  const kept = await findRecord(id);
  if (!kept.ok) notices.tell('record', storageFailureText(kept.failure));
  else if (kept.value) await openKeptRecord(kept.value);
  else notices.tell('record', TABS.gone);
}

/** What was open when the page went away, unless another tab has it open. */
export async function openAgain(kept: KeptRecord): Promise<void> {
  if (await hold.ifFree(kept.id)) await openKeptRecord(kept);
  else notices.tell('elsewhere', TABS.elsewhere(unitText(kept.record.vehicle.unit)));
}

/** Off this device, and out of the tab that has it open. */
export async function dropListed(id: string): Promise<Result<void, StorageFailure>> {
  await hold.fromOthers(id);
  const dropped = await dropRecord(id);
  if (dropped.ok) dropDrafts(id);
  await hold.only(null);
  return dropped;
}

/** Opens what this device kept, where it was left. It passes the same door as a file: an older app may have written it. */
async function openKeptRecord({ id, record, place }: KeptRecord): Promise<void> {
  const opened = openRecord(JSON.stringify(record));
  if (!opened.ok) {
    notices.tell('record', recordFailureText(opened.failure));
    return;
  }
  notices.clear('elsewhere');
  await findFiles(opened.value);
  work.openRecord(opened.value, { id, place });
}
