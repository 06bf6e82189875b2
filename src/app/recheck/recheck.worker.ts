/** Rechecks a package off the page's own thread: hashing takes its time, and measuring again does. */
import { blobSource } from '../../evidence/blob-source.browser.ts';
import { browserHashes } from '../../evidence/hashes.browser.ts';
import { recheckPackage } from '../../recheck/recheck-package.ts';

export type RecheckQuestion = { readonly file: File; readonly timeRoots: readonly Uint8Array[] };

addEventListener('message', async ({ data: { file, timeRoots } }: MessageEvent<RecheckQuestion>) => {
  const tools = { hashes: await browserHashes(), subtle: crypto.subtle, signedBy: null, timeRoots };
  // A rejection would go unheard: it is thrown where the page listens.
  recheckPackage(blobSource(file), tools).then(postMessage, (reason: unknown) => {
    setTimeout(() => {
      throw reason;
    });
  });
});
