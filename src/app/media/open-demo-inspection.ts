import { media, notices } from '../stores.ts';
import { DEMO_UNREACHABLE } from '../words/en.ts';
import { bringSample } from './bring-sample.ts';
import { DEMO_INSPECTION } from './demo-sets.ts';
import { keepFile } from './keep-file.ts';
import { openRecordFile } from './open-record-file.ts';

/** Brings the demo's inspection with all its pictures and opens it as a record file would open: opened again, it is a copy. */
export async function openDemoInspection(): Promise<void> {
  await media.whileReading(async () => {
    const [record, ...pictures] = await Promise.all(
      [DEMO_INSPECTION.record, ...DEMO_INSPECTION.pictures].map(bringSample),
    );
    const arrived = pictures.filter((file) => file !== null);
    if (!record || arrived.length < pictures.length) {
      notices.tell('demo', DEMO_UNREACHABLE);
      return;
    }
    notices.clear('demo');
    const { fingerprint } = await import('../../captures/fingerprint.browser.ts');
    const { signal } = new AbortController();
    for (const file of arrived) await keepFile(await fingerprint(file, signal), file);
    await openRecordFile(record);
  });
}
