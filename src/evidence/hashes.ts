/** Hashing a stream, a piece at a time. Where the hashing is done is the business of hashes.browser.ts and hashes.node.ts. */
import { utf8FromText } from '../basics/utf8.ts';
import type { Sha256OfText } from '../record/history-chain.ts';

export type RunningHash = {
  readonly update: (bytes: Uint8Array) => void;
  /** Lower case hexadecimal. */
  readonly digest: () => string;
};

/** One hash of a kind runs at a time: begin the next when the last is digested. */
export type Hashes = { readonly sha256: () => RunningHash; readonly crc32: () => RunningHash };

export function sha256OfText(hashes: Hashes): Sha256OfText {
  return (text) => {
    const hash = hashes.sha256();
    hash.update(utf8FromText(text));
    return hash.digest();
  };
}
