/** Packages and records as no program of ours writes them: seeded, so that every one can be made again. */
import type { Draw } from '../../src/basics/random.ts';
import type { KeyPair } from '../../src/evidence/signature.ts';
import { type Files, filesOf, jsonIn, mendManifest, packed, putJson, signAnew } from './attacker.ts';

export type Bytes = Uint8Array<ArrayBuffer>;

export const BYTE_MUTATIONS = [
  'bit turned',
  'byte set',
  'cut short',
  'bytes taken out',
  'bytes put in',
  'bytes repeated',
  'two pieces swapped',
] as const;
export const JSON_MUTATIONS = [
  'value replaced',
  'value replaced, hashes mended',
  'value replaced, signed anew',
] as const;
export type Mutation = (typeof BYTE_MUTATIONS)[number] | (typeof JSON_MUTATIONS)[number];

const DOCUMENTS = ['record.json', 'results.json', 'manifest.json', 'signature.json'];

export const whole = (draw: Draw, below: number): number =>
  Math.min(below - 1, Math.floor(draw.uniform(0, below)));

export function mutatedBytes(bytes: Bytes, mutation: (typeof BYTE_MUTATIONS)[number], draw: Draw): Bytes {
  const at = whole(draw, bytes.length);
  const length = 1 + whole(draw, 40);
  const [head, tail] = [bytes.subarray(0, at), bytes.subarray(at)];
  const piece = bytes.slice(at, at + length);
  switch (mutation) {
    case 'bit turned':
      return withByte(bytes, at, (bytes[at] ?? 0) ^ (1 << whole(draw, 8)));
    case 'byte set':
      return withByte(bytes, at, ((bytes[at] ?? 0) + 1 + whole(draw, 255)) & 0xff);
    case 'cut short':
      return bytes.slice(0, at);
    case 'bytes taken out':
      return joined([head, tail.subarray(length)]);
    case 'bytes put in':
      return joined([head, Uint8Array.from({ length }, () => whole(draw, 256)), tail]);
    case 'bytes repeated':
      return joined([head, piece, tail]);
    case 'two pieces swapped': {
      const cut = at + whole(draw, Math.max(1, bytes.length - at));
      return joined([bytes.subarray(cut), bytes.subarray(at, cut), head]);
    }
  }
}

export async function mutatedPackage(
  bytes: Bytes,
  mutation: Mutation,
  draw: Draw,
  strangerKeys: KeyPair,
): Promise<Bytes> {
  const kind = BYTE_MUTATIONS.find((one) => one === mutation);
  if (kind) return mutatedBytes(bytes, kind, draw);
  const files: Files = await filesOf(bytes);
  // A signature that is made anew forgets what was done to the old one.
  const documents = mutation === 'value replaced, signed anew' ? DOCUMENTS.slice(0, 3) : DOCUMENTS;
  const path = documents[whole(draw, documents.length)] ?? 'record.json';
  putJson(files, path, mutatedJson(jsonIn(files, path), draw));
  // A manifest that is not one any more, or lists nothing, cannot be mended: then it stays as it is.
  if (mutation !== 'value replaced') await mendManifest(files).catch(() => {});
  if (mutation === 'value replaced, signed anew') await signAnew(files, strangerKeys);
  return packed(files);
}

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** One value somewhere in the document replaced by something that nobody expects there. */
export function mutatedJson(document: Json, draw: Draw): Json {
  if (typeof document !== 'object' || document === null || draw.uniform(0, 1) < 0.06)
    return strange(document, draw);
  const keys = Object.keys(document);
  if (keys.length === 0) return strange(document, draw);
  const key = keys[whole(draw, keys.length)] ?? '';
  if (Array.isArray(document)) {
    const at = Number(key);
    if (draw.uniform(0, 1) < 0.08) return document.toSpliced(at, 1);
    if (draw.uniform(0, 1) < 0.08) return document.toSpliced(at, 0, document[at] ?? null);
    return document.with(at, mutatedJson(document[at] ?? null, draw));
  }
  if (draw.uniform(0, 1) < 0.08)
    return Object.fromEntries(Object.entries(document).filter(([name]) => name !== key));
  if (draw.uniform(0, 1) < 0.05)
    return JSON.parse(`{"__proto__":{"format":"x"},${JSON.stringify(document).slice(1)}`);
  return { ...document, [key]: mutatedJson(document[key] ?? null, draw) };
}

function strange(before: Json, draw: Draw): Json {
  const nested = (deep: number): Json => (deep === 0 ? [] : [nested(deep - 1)]);
  const values: readonly Json[] = [
    null,
    true,
    -1,
    0,
    1e308,
    5e-324,
    2 ** 53,
    '',
    'x'.repeat(5000),
    '<script>alert(1)</script>',
    '=HYPERLINK("x")',
    '../../etc/passwd',
    '__proto__',
    '\ud800',
    '\u0000',
    [],
    {},
    nested(60),
    typeof before === 'number' ? before * (1 + 1e-9) + 1e-9 : 'other',
    typeof before === 'number' ? before + 1 : 1,
    typeof before === 'string' ? `${before} ` : ' ',
  ];
  return values[whole(draw, values.length)] ?? null;
}

function withByte(bytes: Bytes, at: number, byte: number): Bytes {
  const changed = bytes.slice();
  changed[at] = byte;
  return changed;
}

function joined(pieces: readonly Uint8Array[]): Bytes {
  return Uint8Array.from(Buffer.concat(pieces));
}
