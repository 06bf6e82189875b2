import { open } from 'node:fs/promises';
import type { ByteSource } from './byte-source.ts';

/** Large enough for the disk, small enough that many at once do not count. */
const PIECE_BYTES = 2 ** 20;

/** Rejects as Node does where the file cannot be opened. One read at a time: they share one piece of memory. */
export async function withFileSource<T>(path: string, use: (source: ByteSource) => Promise<T>): Promise<T> {
  const handle = await open(path, 'r');
  try {
    const { size } = await handle.stat();
    const buffer = new Uint8Array(PIECE_BYTES);
    return await use({
      sizeBytes: size,
      async *read(from, to) {
        for (let at = from; at < to; ) {
          const { bytesRead } = await handle.read(buffer, 0, Math.min(PIECE_BYTES, to - at), at);
          if (bytesRead === 0) return;
          yield buffer.subarray(0, bytesRead);
          at += bytesRead;
        }
      },
    });
  } finally {
    await handle.close();
  }
}
