/** Hashes what goes into a package, measures all of it anew and signs, off the page's own thread. */
import { ok, type Result } from '../../basics/result.ts';
import { blobSource } from '../../evidence/blob-source.browser.ts';
import { browserHashes } from '../../evidence/hashes.browser.ts';
import { type PackageFailure, planPackage } from '../../evidence/plan-package.ts';
import { sign } from '../../evidence/signature.ts';
import type { InspectionRecord } from '../../record/record.ts';

export type PackageQuestion = {
  readonly record: InspectionRecord;
  readonly madeAt: string;
  readonly engine: string;
  readonly captures: readonly Blob[];
  readonly stills: readonly { readonly name: string; readonly blob: Blob }[];
  readonly report: string | null;
  readonly keys: CryptoKeyPair;
};

/** Blob parts: a package put together of them copies no capture. */
export type PackageAnswer = Result<readonly BlobPart[], PackageFailure>;

addEventListener('message', async ({ data }: MessageEvent<PackageQuestion>) => {
  const { captures, stills, keys, ...rest } = data;
  const planned = await planPackage(
    {
      ...rest,
      captures: captures.map(blobSource),
      stills: stills.map(({ name, blob }) => ({ name, source: blobSource(blob) })),
    },
    { hashes: await browserHashes(), sign: (manifest) => sign(crypto.subtle, keys, manifest) },
  );
  const answer: PackageAnswer = planned.ok
    ? ok(planned.value.parts.map((part) => (part instanceof Uint8Array ? part : part.blob)))
    : planned;
  postMessage(answer);
});
