/** ZIP files that another program made, or that were made to do harm. */
import { zipSync } from 'fflate';
import { beforeAll, expect, test } from 'vitest';
import { sourceOfBytes } from '../../src/evidence/byte-source.ts';
import { directoryHeader, endRecord, localHeader, type ZipEntry } from '../../src/evidence/zip-layout.ts';
import { readContainer } from '../../src/recheck/read-container.ts';
import { newKeyPair, packageBytes, REFUSED, recheckBytes, smallRecord } from '../evidence/small-package.ts';
import { filesOf } from './attacker.ts';

let whole: Uint8Array<ArrayBuffer>;
beforeAll(async () => {
  whole = await packageBytes({ record: smallRecord([REFUSED]), keys: await newKeyPair() });
});

async function codeOf(bytes: Uint8Array): Promise<string | null> {
  const recheck = await recheckBytes(bytes);
  expect(recheck.holds).toBe(false);
  expect(recheck.checks.files.answer).toBe('not checked');
  const [first] = recheck.checks.container.differences;
  return first?.code ?? null;
}

/** Empty files under these paths, with headers that say what they are told to. */
function container(entries: readonly Partial<ZipEntry>[]): Uint8Array {
  const chunks: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  for (const { path = 'record.json', sizeBytes = 0, crc32 = '00000000' } of entries) {
    const entry = { path, sizeBytes, crc32 };
    chunks.push(localHeader(entry));
    directory.push(directoryHeader(entry, at));
    at += localHeader(entry).length;
  }
  const directoryBytes = directory.reduce((sum, header) => sum + header.length, 0);
  return Buffer.concat([...chunks, ...directory, endRecord(entries.length, directoryBytes, at)]);
}

test.each([
  '../../.profile',
  '/tmp/x.sh',
  'captures/../../x.jpg',
  'C:\\x.exe',
  '__proto__',
  'constructor',
  'captures/a.jpg\u0000.sh',
  'x'.repeat(100),
])('a file that wants to be called %j is refused', async (path) => {
  expect(await codeOf(container([{ path }]))).toBe('container/strange-name');
});

test('two files of one name are refused', async () => {
  expect(await codeOf(container([{}, { path: 'results.json' }, {}]))).toBe('container/name-twice');
});

test('a size that the file does not have is refused before anything of it is read', async () => {
  expect(await codeOf(container([{ sizeBytes: 0xfffffff0 }]))).toBe('container/header');
  const said = endRecord(65_000, 0xfffffff0, 0xfffffff0);
  expect(await codeOf(Buffer.concat([whole.subarray(0, -22), said]))).toBe('container/too-many-files');
  const far = endRecord(3, 400, 0xfffffff0);
  expect(await codeOf(Buffer.concat([whole.subarray(0, -22), far]))).toBe('container/end');
});

test('a compressed file, as a bomb would be, is refused by its header', async () => {
  const bomb = zipSync({ 'record.json': new Uint8Array(5_000_000) });
  expect(bomb.length).toBeLessThan(10_000);
  expect(await codeOf(bomb)).toBe('container/header');
});

test('a package that another program packed anew is told as such', async () => {
  const files = Object.fromEntries(await filesOf(whole));
  expect(await codeOf(zipSync(files, { level: 0 }))).toBe('container/header');
});

test('cut short, added to, or begun with something else', async () => {
  for (const cut of [1, 21, 22, 100, whole.length - 22, whole.length - 1, whole.length])
    expect(await codeOf(whole.subarray(0, whole.length - cut))).toMatch(/^container\/(end|size|header)$/);
  expect(await codeOf(Buffer.concat([whole, Buffer.from([0])]))).toBe('container/end');
  expect(await codeOf(Buffer.concat([Buffer.from('#!/bin/sh\n'), whole]))).toBe('container/end');
  expect(await codeOf(new TextEncoder().encode('not a ZIP file at all, but long enough for one'))).toBe(
    'container/end',
  );
});

test('a source that ends before its stated size is no package', async () => {
  const source = { ...sourceOfBytes(whole), sizeBytes: whole.length + 5000 };
  expect(await readContainer(source)).toMatchObject({ ok: false, failure: { code: 'container/end' } });
});
