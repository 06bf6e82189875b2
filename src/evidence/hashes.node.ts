import { createHash } from 'node:crypto';
import { crc32 } from 'node:zlib';
import type { Hashes } from './hashes.ts';

export const NODE_HASHES: Hashes = {
  sha256() {
    const hash = createHash('sha256');
    return { update: (bytes) => void hash.update(bytes), digest: () => hash.digest('hex') };
  },
  crc32() {
    let value = 0;
    return {
      update: (bytes) => {
        value = crc32(bytes, value);
      },
      digest: () => value.toString(16).padStart(8, '0'),
    };
  },
};
