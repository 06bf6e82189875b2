/** Packages for tests: the example record cut down to some measurements, its captures a few bytes each. */
import { webcrypto } from 'node:crypto';
import type { ByteSource } from '../../src/evidence/byte-source.ts';
import { sourceOfBytes } from '../../src/evidence/byte-source.ts';
import { NODE_HASHES } from '../../src/evidence/hashes.node.ts';
import { sha256OfText } from '../../src/evidence/hashes.ts';
import { type PackageInput, planPackage } from '../../src/evidence/plan-package.ts';
import { KEY_ALGORITHM, type KeyPair, sign } from '../../src/evidence/signature.ts';
import type { Part } from '../../src/evidence/zip-parts.ts';
import { recheckPackage } from '../../src/recheck/recheck-package.ts';
import { sealHistory } from '../../src/record/history-chain.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { exampleRecord } from '../record/example-record.ts';

export const sha256 = sha256OfText(NODE_HASHES);
export const { subtle } = webcrypto;

/** Nothing of known size in its pictures: refused at once, so that a recheck of it costs next to nothing. */
export const REFUSED = 'a2r-found';
export const MEASURED = 'a1r-repaired';

export function newKeyPair(): Promise<KeyPair> {
  return subtle.generateKey(KEY_ALGORITHM, false, ['sign', 'verify']);
}

/** The example with these measurements; its captures are the bytes given below. */
export function smallRecord(measurementIds: readonly string[], captureBytes = 40): InspectionRecord {
  const record = exampleRecord();
  const wheelEnds = record.wheelEnds
    .map((wheelEnd) => ({
      ...wheelEnd,
      measurements: wheelEnd.measurements.filter(({ id }) => measurementIds.includes(id)),
    }))
    .filter(({ measurements }) => measurements.length > 0);
  const captures = record.captures.map((capture) => {
    const bytes = captureOf(capture.id, captureBytes);
    return { ...capture, sizeBytes: bytes.length, sha256: hashOf(bytes) };
  });
  return { ...record, wheelEnds, captures };
}

/** Bytes that differ from capture to capture. */
export function captureOf(id: string, sizeBytes: number): Uint8Array<ArrayBuffer> {
  const name = [...id].reduce((sum, character) => sum * 31 + character.charCodeAt(0), 7);
  return Uint8Array.from({ length: sizeBytes }, (_v, i) => (name * (i + 1) + (i >> 3)) & 0xff);
}

export function hashOf(bytes: Uint8Array): string {
  const hash = NODE_HASHES.sha256();
  hash.update(bytes);
  return hash.digest();
}

export type SmallPackage = {
  readonly record: InspectionRecord;
  readonly keys: KeyPair;
  readonly captureBytes?: number;
  /** By the capture's id, in place of invented bytes. */
  readonly photos?: ReadonlyMap<string, Uint8Array>;
};

export async function packageBytes({
  record,
  keys,
  captureBytes = 40,
  photos = new Map(),
}: SmallPackage): Promise<Uint8Array<ArrayBuffer>> {
  const sealed = sealHistory(record, { at: '2026-05-12T17:00:00.000Z', by: 'R. Ames' }, sha256);
  const input: PackageInput<ByteSource> = {
    record: sealed,
    madeAt: '2026-05-12T17:00:01.000Z',
    engine: '0.1.0',
    captures: sealed.captures.map(({ id }) => sourceOfBytes(photos.get(id) ?? captureOf(id, captureBytes))),
    stills: [{ name: 'axle 2 right released', source: sourceOfBytes(captureOf('still', 30)) }],
    report: '<!doctype html><title>Report</title>\n',
  };
  const planned = await planPackage(input, {
    hashes: NODE_HASHES,
    sign: (manifest) => sign(subtle, keys, manifest),
  });
  if (!planned.ok) throw new Error(planned.failure.code);
  const bytes = await joined(planned.value.parts);
  if (bytes.length !== planned.value.sizeBytes) throw new Error('The size is not as planned');
  return bytes;
}

export async function joined(parts: readonly Part<ByteSource>[]): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Buffer[] = [];
  for (const part of parts)
    if (part instanceof Uint8Array) chunks.push(Buffer.from(part));
    else for await (const piece of part.read(0, part.sizeBytes)) chunks.push(Buffer.from(piece));
  return Uint8Array.from(Buffer.concat(chunks));
}

export function recheckBytes(
  bytes: Uint8Array,
  signedBy: string | null = null,
  timeRoots: readonly Uint8Array[] = [],
) {
  return recheckPackage(sourceOfBytes(bytes), { hashes: NODE_HASHES, subtle, signedBy, timeRoots });
}
