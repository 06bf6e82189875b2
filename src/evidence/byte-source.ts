/** Bytes that need not fit into memory: a file on disk, a Blob, a short text. */
import type { Hashes } from './hashes.ts';

export type ByteSource = {
  readonly sizeBytes: number;
  /** The bytes from..to in pieces. A piece is valid until the next is asked for. */
  readonly read: (from: number, to: number) => AsyncIterable<Uint8Array>;
};

export function sourceOfBytes(bytes: Uint8Array): ByteSource {
  return {
    sizeBytes: bytes.length,
    async *read(from, to) {
      yield bytes.subarray(from, to);
    },
  };
}

export type ByteFacts = { readonly sizeBytes: number; readonly sha256: string; readonly crc32: string };

/** sizeBytes counts what came: a source that ends early shows itself there. */
export async function factsOf(pieces: AsyncIterable<Uint8Array>, hashes: Hashes): Promise<ByteFacts> {
  const sha256 = hashes.sha256();
  const crc32 = hashes.crc32();
  let sizeBytes = 0;
  for await (const piece of pieces) {
    sha256.update(piece);
    crc32.update(piece);
    sizeBytes += piece.length;
  }
  return { sizeBytes, sha256: sha256.digest(), crc32: crc32.digest() };
}

/** For what is known to be small. */
export async function bytesOf(
  source: ByteSource,
  from: number,
  to: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = new Uint8Array(to - from);
  let at = 0;
  for await (const piece of source.read(from, to)) {
    bytes.set(piece.subarray(0, bytes.length - at), at);
    at += piece.length;
  }
  return bytes.subarray(0, Math.min(at, bytes.length));
}
