import { canonicalJson } from '../../basics/canonical-json.ts';
import { utf8FromText } from '../../basics/utf8.ts';
import { sign } from '../../evidence/signature.ts';
import {
  SECOND_READING_FORMAT,
  SECOND_READING_VERSION,
  type SecondReading,
  secondReadingSchema,
} from '../../recheck/second-reading.ts';
import { saveFile } from '../parts/save-file.ts';
import { ENGINE_VERSION } from '../report/engine-version.ts';
import { deviceKey } from '../storage/device-key.ts';
import { notices } from '../stores.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { secondReadingFileName } from '../words/file-names.ts';

type Said = Pick<SecondReading, 'package' | 'record' | 'comparisons'>;

/** A document of its own beside the package, signed with this device's key. */
export async function saveSecondReading(said: Said): Promise<void> {
  const keys = await deviceKey();
  if (!keys.ok) {
    notices.tell('storage', storageFailureText(keys.failure));
    return;
  }
  const document: SecondReading = secondReadingSchema.parse({
    format: SECOND_READING_FORMAT,
    version: SECOND_READING_VERSION,
    madeAt: new Date().toISOString(),
    engine: ENGINE_VERSION,
    ...said,
  });
  const bytes = utf8FromText(canonicalJson(document));
  const signature = await sign(crypto.subtle, keys.value, bytes, 'second-reading');
  const text = `${JSON.stringify({ document, signature }, null, 2)}\n`;
  saveFile(new Blob([text], { type: 'application/json' }), secondReadingFileName(said.record));
}
