import { sign } from '../../evidence/signature.ts';
import type { Recheck } from '../../recheck/recheck.ts';
import {
  bytesOfDocument,
  recheckDocument,
  recheckFileSchema,
  type SecondReading,
} from '../../recheck/recheck-document.ts';
import { saveFile } from '../parts/save-file.ts';
import { ENGINE_VERSION } from '../report/engine-version.ts';
import { deviceKey } from '../storage/device-key.ts';
import { notices } from '../stores.ts';
import { storageFailureText } from '../words/failures-storage.ts';
import { recheckFileName } from '../words/file-names.ts';

/** A document of its own beside the package, signed with this device's key. */
export async function saveRecheck(
  packageName: string,
  found: Recheck & { readonly manifestSha256: string },
  secondReading: SecondReading | null,
): Promise<void> {
  const keys = await deviceKey();
  if (!keys.ok) {
    notices.tell('storage', storageFailureText(keys.failure));
    return;
  }
  const made = { madeAt: new Date().toISOString(), engine: ENGINE_VERSION };
  const document = recheckDocument(found, secondReading, made);
  const signature = await sign(crypto.subtle, keys.value, bytesOfDocument(document), 'recheck');
  const text = `${JSON.stringify(recheckFileSchema.parse({ document, signature }), null, 2)}\n`;
  saveFile(new Blob([text], { type: 'application/json' }), recheckFileName(packageName));
}
