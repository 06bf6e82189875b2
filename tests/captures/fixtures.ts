import { readFileSync } from 'node:fs';

export function fixture(name: string): Uint8Array {
  return new Uint8Array(readFileSync(`tests/fixtures/media/${name}`));
}

export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
