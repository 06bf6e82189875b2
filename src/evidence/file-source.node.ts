import { type FileHandle, open } from 'node:fs/promises';
import type { ByteSource } from './byte-source.ts';

/** Large enough for the disk, small enough that many at once do not count. */
const PIECE_BYTES = 2 ** 20;

type Opened = { readonly handle: FileHandle; readonly from: number; readonly to: number };

/**
 * The files one after the other, as one. Rejects as Node does where one cannot be opened. One read at a time: they share one
 * piece of memory.
 */
export async function withFileSource<T>(
  paths: readonly string[],
  use: (source: ByteSource) => Promise<T>,
): Promise<T> {
  const opened: Opened[] = [];
  try {
    let sizeBytes = 0;
    for (const path of paths) {
      const handle = await open(path, 'r');
      const from = sizeBytes;
      opened.push({ handle, from, to: from });
      sizeBytes += (await handle.stat()).size;
      opened[opened.length - 1] = { handle, from, to: sizeBytes };
    }
    const buffer = new Uint8Array(PIECE_BYTES);
    return await use({
      sizeBytes,
      async *read(from, to) {
        for (let at = from; at < to; ) {
          const here = opened.find((file) => at >= file.from && at < file.to);
          if (!here) return;
          const wanted = Math.min(PIECE_BYTES, Math.min(to, here.to) - at);
          const { bytesRead } = await here.handle.read(buffer, 0, wanted, at - here.from);
          if (bytesRead === 0) return;
          yield buffer.subarray(0, bytesRead);
          at += bytesRead;
        }
      },
    });
  } finally {
    for (const { handle } of opened) await handle.close();
  }
}
