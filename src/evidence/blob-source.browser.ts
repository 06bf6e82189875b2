import type { ByteSource } from './byte-source.ts';

/** Pieces, not Blob.stream(): WebKit has trouble with long streams. */
const PIECE_BYTES = 4 * 2 ** 20;

/** With the Blob itself beside it, so that a Blob made of many copies nothing. */
export type BlobSource = ByteSource & { readonly blob: Blob };

export function blobSource(blob: Blob): BlobSource {
  return {
    blob,
    sizeBytes: blob.size,
    async *read(from, to) {
      for (let at = from; at < to; at += PIECE_BYTES)
        yield new Uint8Array(await blob.slice(at, Math.min(at + PIECE_BYTES, to)).arrayBuffer());
    },
  };
}
