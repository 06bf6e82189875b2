export function hexFromBytes(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Of an even number of hexadecimal digits. */
export function bytesFromHex(digits: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(digits.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}
