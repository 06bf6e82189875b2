import { beforeAll, expect, test } from 'vitest';
import type { KeyPair } from '../../src/evidence/signature.ts';
import { CHECKS, type Recheck } from '../../src/recheck/recheck.ts';
import { MEASURED, newKeyPair, packageBytes, recheckBytes, smallRecord } from '../evidence/small-package.ts';
import { type Files, filesOf, jsonIn, mendManifest, packed, putJson, signAnew } from './attacker.ts';

let keys: KeyPair;
let strangerKeys: KeyPair;
let whole: Uint8Array<ArrayBuffer>;
beforeAll(async () => {
  [keys, strangerKeys] = await Promise.all([newKeyPair(), newKeyPair()]);
  whole = await packageBytes({ record: smallRecord([MEASURED]), keys });
});

const answers = ({ checks }: Recheck) =>
  Object.fromEntries(CHECKS.map((name) => [name, checks[name].answer]));
const codes = ({ checks }: Recheck) => [
  ...new Set(CHECKS.flatMap((name) => checks[name].differences.map(({ code }) => code))),
];

/** How far the tracks are covered: not at all, the hashes made to fit, or signed anew as well. */
type Cover = 'none' | 'hashes' | 'signature';

async function tampered(change: (files: Files) => void, cover: Cover): Promise<Recheck> {
  const files = await filesOf(whole);
  change(files);
  if (cover !== 'none') await mendManifest(files);
  if (cover === 'signature') await signAnew(files, strangerKeys);
  return recheckBytes(await packed(files));
}

test('a package as it was made holds in every point', async () => {
  const recheck = await recheckBytes(whole);
  expect(codes(recheck)).toEqual([]);
  expect(recheck).toMatchObject({
    holds: true,
    signature: { state: 'good' },
    engine: '0.1.0',
    record: { id: 'example-1' },
  });
  expect(recheck.signature.fingerprint).toMatch(/^[0-9a-f]{4}( [0-9a-f]{4}){3}$/);
});

function moveMark(files: Files): void {
  const record = jsonIn(files, 'record.json');
  const view = record.wheelEnds[0].measurements[0].views.find(
    (one: { state: string }) => one.state === 'applied',
  );
  view.marks.find((mark: { kind: string }) => mark.kind === 'clevis-pin').xPx += 1;
  putJson(files, 'record.json', record);
}

function changeLimit(files: Files): void {
  const results = jsonIn(files, 'results.json');
  results.results[0].row.limit_mm += 6.35;
  putJson(files, 'results.json', results);
}

function replaceFrame(files: Files): void {
  const [path] = [...files.keys()].filter((name) => name.startsWith('captures/'));
  if (path) files.set(path, new Uint8Array(40).fill(7));
}

function cutHistoryLine(files: Files): void {
  const record = jsonIn(files, 'record.json');
  record.history.splice(1, 1);
  putJson(files, 'record.json', record);
}

test.each<[string, (files: Files) => void, string, object]>([
  ['a mark moved by one pixel', moveMark, 'record.json', { code: 'history/state-differs' }],
  ['a limit changed', changeLimit, 'results.json', { code: 'results/differ', quantity: 'limit_mm' }],
  [
    'a frame replaced',
    replaceFrame,
    'captures/001-invented-1.jpg',
    { code: 'captures/missing', fileName: 'invented-1.jpg' },
  ],
  ['a history line cut', cutHistoryLine, 'record.json', { code: 'history/does-not-follow', entry: 1 }],
])('%s is reported by name, whether or not the tracks are covered', async (_what, change, path, named) => {
  const plain = await tampered(change, 'none');
  expect(plain.holds).toBe(false);
  expect(plain.checks.hashes.differences).toMatchObject([{ code: 'hashes/differs', path }]);
  expect(answers(plain)).toMatchObject({ container: 'yes', signature: 'yes' });

  expect(CHECKS.flatMap((name) => plain.checks[name].differences)).toContainEqual(
    expect.objectContaining(named),
  );

  const covered = await tampered(change, 'hashes');
  expect(answers(covered)).toMatchObject({ hashes: 'yes', signature: 'no' });
  expect(covered.signature.state).toBe('bad');
  expect(covered.checks.signature.differences).toEqual([{ code: 'signature/does-not-fit' }]);

  const signedAnew = await tampered(change, 'signature');
  expect(signedAnew).toMatchObject({ holds: false, signature: { state: 'good' } });
  const all = CHECKS.flatMap((name) => signedAnew.checks[name].differences);
  expect(all).toContainEqual(expect.objectContaining(named));
});

test('a moved mark is found by the recomputed stroke as well, in its measurement', async () => {
  const recheck = await tampered(moveMark, 'signature');
  expect(recheck.checks.results.differences).toContainEqual(
    expect.objectContaining({
      code: 'results/differ',
      wheelEnd: 'axle 1 right',
      measurement: MEASURED,
      quantity: 'strokeMm.value',
    }),
  );
});

test('a package that a stranger made whole again is told by the key alone', async () => {
  const original = await recheckBytes(whole);
  const files = await filesOf(whole);
  await signAnew(files, strangerKeys);
  const forged = await packed(files);
  expect((await recheckBytes(forged)).holds).toBe(true);
  const asked = await recheckBytes(forged, original.signature.fingerprint);
  expect(asked.holds).toBe(false);
  expect(codes(asked)).toEqual(['signature/other-key']);
});

test('a package without its signature does not hold', async () => {
  const files = await filesOf(whole);
  files.delete('signature.json');
  const recheck = await recheckBytes(await packed(files));
  expect(recheck.signature.state).toBe('none');
  expect(answers(recheck)).toMatchObject({ signature: 'no', files: 'no', hashes: 'yes', results: 'yes' });
});

test('a file put in, one left out, one out of its place are named', async () => {
  const extra = await tampered((files) => files.set('stills/more.jpg', new Uint8Array(3)), 'none');
  expect(extra.checks.files.differences).toEqual([{ code: 'files/not-listed', path: 'stills/more.jpg' }]);
  const less = await tampered((files) => files.delete('report.html'), 'none');
  expect(less.checks.files.differences).toEqual([{ code: 'files/missing', path: 'report.html' }]);
  const moved = await tampered((files) => {
    const report = files.get('report.html') ?? new Uint8Array();
    files.delete('report.html');
    files.set('report.html', report);
  }, 'none');
  expect(moved.checks.files.differences).toMatchObject([{ code: 'files/out-of-order' }]);
});

test('what is unreadable leaves unanswered only what rests on it', async () => {
  const noRecord = await tampered((files) => files.set('record.json', new TextEncoder().encode('{')), 'none');
  expect(answers(noRecord)).toEqual({
    container: 'yes',
    files: 'no',
    hashes: 'no',
    signature: 'yes',
    timeStamp: 'none',
    record: 'no',
    history: 'not checked',
    captures: 'not checked',
    ruleSets: 'not checked',
    results: 'not checked',
  });
  const noManifest = await tampered(
    (files) => files.set('manifest.json', new TextEncoder().encode('[]')),
    'none',
  );
  expect(answers(noManifest)).toMatchObject({
    files: 'no',
    hashes: 'not checked',
    results: 'yes',
    signature: 'no',
  });
});
