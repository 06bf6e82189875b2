/** Time stamps in the page. Fetched when asked for: the library that reads them is as large as a screen. */
import { ok, type Result } from '../../basics/result.ts';
import { blobSource } from '../../evidence/blob-source.browser.ts';
import { browserHashes } from '../../evidence/hashes.browser.ts';
import { timeStampRequest } from '../../evidence/time-stamp-request.ts';
import { manifestOfPackage, type StampFailure, stampPackage } from '../../recheck/stamp-package.ts';
import type { TimeStamp } from '../../recheck/time-stamp.ts';

export type Stamped = { readonly file: Blob; readonly stamp: TimeStamp };

export async function requestOf(packed: Blob): Promise<Result<Blob, StampFailure>> {
  const manifest = await manifestOfPackage(blobSource(packed), await browserHashes());
  if (!manifest.ok) return manifest;
  return ok(new Blob([timeStampRequest(manifest.value.sha256)], { type: 'application/timestamp-query' }));
}

export async function stampedWith(packed: Blob, answer: Blob): Promise<Result<Stamped, StampFailure>> {
  const given = new Uint8Array(await answer.arrayBuffer());
  const slice = (from: number, to: number) => blobSource(packed.slice(from, to));
  const tools = { hashes: await browserHashes(), subtle: crypto.subtle, timeRoots: [] };
  const made = await stampPackage(blobSource(packed), { given, slice }, tools);
  if (!made.ok) return made;
  const { zip, stamp } = made.value;
  const parts = zip.parts.map((part) => (part instanceof Uint8Array ? part : part.blob));
  return ok({ file: new Blob(parts, { type: 'application/zip' }), stamp });
}
