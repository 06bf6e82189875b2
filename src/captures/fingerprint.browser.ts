/** SHA-256 of a file, a piece at a time: the memory it takes does not grow with the file. */
import { createSHA256 } from 'hash-wasm';

/** Large enough to be fast, small enough for a phone. Pieces, not Blob.stream(): WebKit has trouble with long streams. */
const PIECE_BYTES = 4 * 2 ** 20;

/** Lower case hexadecimal. Rejects with the signal's reason when aborted, and as the browser does when the file cannot be read. */
export async function fingerprint(blob: Blob, signal: AbortSignal): Promise<string> {
  const hash = await createSHA256();
  for (let at = 0; at < blob.size; at += PIECE_BYTES) {
    signal.throwIfAborted();
    hash.update(new Uint8Array(await blob.slice(at, at + PIECE_BYTES).arrayBuffer()));
  }
  signal.throwIfAborted();
  return hash.digest('hex');
}
