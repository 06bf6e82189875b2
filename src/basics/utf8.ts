/** Text as UTF-8 bytes and back. Every runtime of ours has these classes; the library of the pure folders does not declare them. */
import { fail, ok, type Result } from './result.ts';

declare const TextEncoder: new () => { encode(text: string): Uint8Array<ArrayBuffer> };
declare const TextDecoder: new (
  label: 'utf-8',
  options: { readonly fatal: true; readonly ignoreBOM: true },
) => { decode(bytes: Uint8Array): string };

export function utf8FromText(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text);
}

/** Bytes that are no UTF-8 are refused, and a byte order mark stays in the text: what is read is what was hashed. */
export function textFromUtf8(bytes: Uint8Array): Result<string, { readonly code: 'utf8/broken' }> {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch {
    return fail({ code: 'utf8/broken' });
  }
}
