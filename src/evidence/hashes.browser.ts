import { createCRC32, createSHA256 } from 'hash-wasm';
import type { Hashes } from './hashes.ts';

export async function browserHashes(): Promise<Hashes> {
  const [sha256, crc32] = await Promise.all([createSHA256(), createCRC32()]);
  return { sha256: () => running(sha256.init()), crc32: () => running(crc32.init()) };
}

function running(hash: Awaited<ReturnType<typeof createSHA256>>) {
  return { update: (bytes: Uint8Array) => void hash.update(bytes), digest: () => hash.digest('hex') };
}
