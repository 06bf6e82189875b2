import { unzipSync } from 'fflate';
import { beforeAll, expect, test } from 'vitest';
import { sourceOfBytes } from '../../src/evidence/byte-source.ts';
import { NODE_HASHES } from '../../src/evidence/hashes.node.ts';
import { planPackage } from '../../src/evidence/plan-package.ts';
import { type KeyPair, sign, signatureSchema, verify } from '../../src/evidence/signature.ts';
import {
  captureOf,
  hashOf,
  newKeyPair,
  packageBytes,
  REFUSED,
  smallRecord,
  subtle,
} from './small-package.ts';

let keys: KeyPair;
beforeAll(async () => {
  keys = await newKeyPair();
});

test('another program reads the same files out of it, manifest and signature first, captures byte for byte', async () => {
  const record = smallRecord([REFUSED]);
  const files = unzipSync(await packageBytes({ record, keys }));
  const paths = Object.keys(files);
  expect(paths.slice(0, 4)).toEqual(['manifest.json', 'signature.json', 'record.json', 'results.json']);
  expect(paths).toContain('stills/axle-2-right-released.jpg');
  const captures = paths.filter((path) => path.startsWith('captures/'));
  expect(captures.map((path) => Buffer.from(files[path] ?? []))).toEqual(
    record.captures.map(({ id }) => Buffer.from(captureOf(id, 40))),
  );
  const manifest = JSON.parse(Buffer.from(files['manifest.json'] ?? []).toString());
  expect(manifest.files.map(({ path, sha256 }: { path: string; sha256: string }) => [path, sha256])).toEqual(
    paths.slice(2).map((path) => [path, hashOf(files[path] ?? new Uint8Array())]),
  );
  expect(manifest.ruleSets).toMatchObject([{ id: record.ruleSetId }]);
  const signature = signatureSchema.parse(JSON.parse(Buffer.from(files['signature.json'] ?? []).toString()));
  expect(await verify(subtle, signature, Uint8Array.from(files['manifest.json'] ?? []))).toBe(true);
});

test('a capture that is not the one of the record ends it, by name', async () => {
  const record = smallRecord([REFUSED]);
  const captures = record.captures.map(({ id }) => sourceOfBytes(captureOf(id === 'c3' ? 'other' : id, 40)));
  const input = {
    record,
    madeAt: '2026-05-12T17:00:01.000Z',
    engine: '0.1.0',
    captures,
    stills: [],
    report: null,
  };
  const planned = await planPackage(input, {
    hashes: NODE_HASHES,
    sign: (bytes) => sign(subtle, keys, bytes),
  });
  expect(planned).toMatchObject({
    ok: false,
    failure: { code: 'package/capture-changed', captureId: 'c3', fileName: 'invented-3.jpg' },
  });
});

test('a signature of another key, or with another fingerprint written into it, does not verify', async () => {
  const manifest = new TextEncoder().encode('{}');
  const signature = await sign(subtle, keys, manifest);
  const other = await sign(subtle, await newKeyPair(), manifest);
  expect(await verify(subtle, signature, manifest)).toBe(true);
  expect(await verify(subtle, { ...signature, publicKey: other.publicKey }, manifest)).toBe(false);
  expect(await verify(subtle, { ...signature, fingerprint: other.fingerprint }, manifest)).toBe(false);
  expect(await verify(subtle, signature, new TextEncoder().encode('{} '))).toBe(false);
  // The last character of 43 carries two bits that mean nothing: written another way, it is another text for the same key.
  const { x } = signature.publicKey;
  const last = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
  const oddX = x.slice(0, -1) + last[last.indexOf(x.at(-1) ?? '') | 1];
  expect(
    await verify(subtle, { ...signature, publicKey: { ...signature.publicKey, x: oddX } }, manifest),
  ).toBe(false);
});
