/** Brings the kept files of a record's captures; a capture whose file is not on this device is noted as missing. */
import type { InspectionRecord } from '../../record/record.ts';
import { findCapture } from '../storage/kept-captures.ts';
import { media } from '../stores.ts';

export async function findFiles(record: InspectionRecord): Promise<void> {
  const { files } = media.getState();
  const unknown = record.captures.filter(({ sha256 }) => !files[sha256]);
  await Promise.all(
    unknown.map(async ({ sha256 }) => {
      const found = await findCapture(sha256);
      media.put(sha256, found.ok ? found.value : null);
    }),
  );
}
