/** Tokens made by OpenSSL (tests/fixtures/time-stamps): what it vouches for holds here, what is wrong with the others is told. */
import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { sourceOfBytes } from '../../src/evidence/byte-source.ts';
import { NODE_HASHES } from '../../src/evidence/hashes.node.ts';
import { timeStampRequest } from '../../src/evidence/time-stamp-request.ts';
import { manifestOfPackage, stampPackage } from '../../src/recheck/stamp-package.ts';
import { readTimeRoots } from '../../src/recheck/time-roots.ts';
import { verifyToken } from '../../src/recheck/verify-token.ts';
import {
  joined,
  newKeyPair,
  packageBytes,
  REFUSED,
  recheckBytes,
  smallRecord,
  subtle,
} from '../evidence/small-package.ts';

const file = (name: string) => Uint8Array.from(readFileSync(`tests/fixtures/time-stamps/${name}`));
const unstamped = Uint8Array.from(readFileSync('tests/fixtures/packages/version-1.zip'));
const tools = { hashes: NODE_HASHES, subtle, timeRoots: [] };

function roots(name: string): readonly Uint8Array[] {
  const read = readTimeRoots(file(name));
  if (!read.ok) throw new Error(read.failure.code);
  return read.value;
}

let manifest: { readonly bytes: Uint8Array<ArrayBuffer>; readonly sha256: string };
beforeAll(async () => {
  const read = await manifestOfPackage(sourceOfBytes(unstamped), NODE_HASHES);
  if (!read.ok) throw new Error(read.failure.code);
  manifest = read.value;
});

const verified = (token: Uint8Array, timeRoots: readonly Uint8Array[] = []) =>
  verifyToken(token, manifest, { subtle, timeRoots });

async function stamped(token: Uint8Array): Promise<Uint8Array<ArrayBuffer>> {
  const slice = (from: number, to: number) => sourceOfBytes(unstamped.subarray(from, to));
  const made = await stampPackage(sourceOfBytes(unstamped), { given: token, slice }, tools);
  if (!made.ok) throw new Error(made.failure.code);
  return joined(made.value.zip.parts);
}

const fingerprints = readFileSync('tests/fixtures/time-stamps/certificates.txt', 'utf8')
  .match(/[0-9A-F]{2}(?::[0-9A-F]{2}){31}/g)
  ?.map((text) => text.replaceAll(':', '').toLowerCase());

test('the request is byte for byte what openssl ts -query asks', () => {
  expect(timeStampRequest(manifest.sha256)).toEqual(file('request.tsq'));
});

test.each([
  ['rsa.tsr', 'Invented time stamps, RSA, Invented for tests', 0],
  ['ec.tsr', 'Invented time stamps, EC, Invented for tests', 1],
  ['ec.tst', 'Invented time stamps, EC, Invented for tests', 1],
])(
  '%s holds, names its authority, and its authority is trusted by its root alone',
  async (name, authority, at) => {
    const found = await verified(file(name));
    if (!found.ok) throw new Error(found.failure.code);
    const { time, ...stamp } = found.value.stamp;
    expect(stamp).toEqual({
      accuracyMs: 1500,
      authority,
      certificateSha256: fingerprints?.[at],
      trust: 'not checked',
    });
    expect(time).toMatch(/^20\d\d-\d\d-\d\dT\d\d:\d\d:\d\d\.000Z$/);
    const trust = async (root: string) => {
      const again = await verified(file(name), roots(root));
      return again.ok && again.value.stamp.trust;
    };
    expect(await trust('root.pem')).toBe('reaches a root');
    expect(await trust('root.der')).toBe('reaches a root');
    expect(await trust('other-root.pem')).toBe('reaches no root');
  },
);

test.each([
  ['other-hash.tsr', 'time-stamp/other-hash'],
  ['sha512.tsr', 'time-stamp/algorithm'],
  ['sha1-signed.tsr', 'time-stamp/algorithm'],
  ['no-certificate.tsr', 'time-stamp/no-certificate'],
  ['refused.tsr', 'time-stamp/refused'],
  ['wrong-purpose.tst', 'time-stamp/wrong-purpose'],
  ['two-purposes.tst', 'time-stamp/wrong-purpose'],
  ['no-reference.tst', 'time-stamp/other-certificate'],
  ['run-out.tst', 'time-stamp/outside-validity'],
  ['request.tsq', 'time-stamp/not-readable'],
  ['root.der', 'time-stamp/not-readable'],
])('%s does not: %s', async (name, code) => {
  expect(await verified(file(name))).toMatchObject({ ok: false, failure: { code } });
});

test('cut short, with more behind it, too large, nested without end, or nothing at all: refused as such', async () => {
  const token = file('ec.tst');
  for (let length = 0; length < token.length; length += 37)
    expect(await verified(token.subarray(0, length))).toMatchObject({
      failure: { code: 'time-stamp/not-readable' },
    });
  expect(await verified(Uint8Array.from([...token, 0]))).toMatchObject({
    failure: { code: 'time-stamp/not-readable' },
  });
  expect(await verified(new Uint8Array(2e6).fill(0x30))).toMatchObject({
    failure: { code: 'time-stamp/too-large' },
  });
  // Sequences of no stated length, each in the one before it.
  const deep = new Uint8Array(99_000).map((_byte, i) => (i % 2 ? 0x80 : 0x30));
  expect(await verified(deep)).toMatchObject({ failure: { code: 'time-stamp/not-readable' } });
});

test('another time written in, or another signature under it, does not fit', async () => {
  for (const name of ['rsa.tsr', 'ec.tst']) {
    const token = file(name);
    const text = String.fromCharCode(...token);
    // GeneralizedTime of the token's info: tag, length, then the year.
    const year = text.indexOf('\x18\x0f20') + 2;
    const earlier = token.slice();
    earlier[year + 3] = (earlier[year + 3] ?? 0) - 1;
    // The signature's value ends the token.
    const forged = token.slice();
    forged[token.length - 1] = (forged[token.length - 1] ?? 0) ^ 1;
    for (const changed of [earlier, forged])
      expect(await verified(changed), name).toEqual({
        ok: false,
        failure: { code: 'time-stamp/does-not-fit' },
      });
  }
});

test('no bit turned in a token lets it say anything else', async () => {
  const token = file('ec.tst');
  const before = await verified(token);
  let refused = 0;
  for (let at = 0; at < token.length; at += 47) {
    const turned = token.slice();
    turned[at] = (turned[at] ?? 0) ^ (1 << (at % 8));
    const found = await verified(turned);
    if (!found.ok) refused++;
    else if (before.ok) expect(found.value.stamp, `byte ${at}`).toEqual(before.value.stamp);
  }
  // What is left are the certificates above the signer's, which only the way to a root rests on.
  expect(refused).toBeGreaterThan(0.6 * (token.length / 47));
});

test('kept in a package it is a tenth answer, and every bit of it counts', async () => {
  const whole = await stamped(file('ec.tsr'));
  const before = await recheckBytes(unstamped);
  const found = await recheckBytes(whole);
  expect(before.checks.timeStamp).toEqual({ answer: 'none', differences: [] });
  expect(found).toMatchObject({
    checks: { ...before.checks, timeStamp: { answer: 'yes', differences: [] } },
    signature: before.signature,
    manifestSha256: before.manifestSha256,
    timeStamp: { trust: 'not checked' },
  });
  const inside = found.stored.find(({ path }) => path === 'timestamp.tst');
  if (!inside) throw new Error('no time stamp in the package');
  expect(whole.slice(inside.from, inside.from + inside.sizeBytes)).toEqual(file('ec.tst'));
  for (let at = inside.from; at < inside.from + inside.sizeBytes; at += 401) {
    const turned = whole.slice();
    turned[at] = (turned[at] ?? 0) ^ 4;
    const { checks } = await recheckBytes(turned);
    expect(checks.container.differences).toEqual([{ code: 'container/checksum', path: 'timestamp.tst' }]);
  }
});

test('where roots are given, one of them must be above the authority', async () => {
  const whole = await stamped(file('ec.tst'));
  const other = await recheckBytes(whole, null, roots('other-root.pem'));
  expect(other.holds).toBe(false);
  expect(other.checks.timeStamp.differences).toMatchObject([{ code: 'time-stamp/not-trusted' }]);
  const right = await recheckBytes(whole, null, roots('root.pem'));
  expect(right.checks.timeStamp.answer).toBe('yes');
});

test('a stamp of another package is not put in, nor any stamp into what is no package', async () => {
  const other = await packageBytes({ record: smallRecord([REFUSED]), keys: await newKeyPair() });
  const put = (bytes: Uint8Array) =>
    stampPackage(sourceOfBytes(bytes), { given: file('ec.tst'), slice: () => sourceOfBytes(bytes) }, tools);
  expect(await put(other)).toMatchObject({ failure: { code: 'time-stamp/other-hash' } });
  expect(await put(file('ec.tst'))).toMatchObject({ failure: { code: 'stamp/no-package' } });
});

test('a file without a certificate is no roots', () => {
  for (const name of ['request.tsq', 'certificates.txt', 'ec.tst'])
    expect(readTimeRoots(file(name)), name).toEqual({ ok: false, failure: { code: 'time-roots/none' } });
});
