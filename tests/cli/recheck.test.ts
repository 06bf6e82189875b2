import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sign } from '../../src/evidence/signature.ts';
import { bytesOfDocument, recheckDocument } from '../../src/recheck/recheck-document.ts';
import { withPlayedClip } from '../../src/record/played-clips.ts';
import {
  newKeyPair,
  packageBytes,
  REFUSED,
  recheckBytes,
  smallRecord,
  subtle,
} from '../evidence/small-package.ts';

let folder = '';
let fingerprint = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'strokewitness-'));
  const whole = await packageBytes({ record: smallRecord([REFUSED]), keys: await newKeyPair() });
  fingerprint = (await recheckBytes(whole)).signature.fingerprint ?? '';
  writeFileSync(join(folder, 'whole.zip'), whole);
  const played = withPlayedClip(smallRecord([REFUSED]), 'c6');
  writeFileSync(join(folder, 'played.zip'), await packageBytes({ record: played, keys: await newKeyPair() }));
  const flipped = whole.slice();
  const middle = whole.length >> 1;
  flipped[middle] = (flipped[middle] ?? 0) ^ 1;
  writeFileSync(join(folder, 'flipped.zip'), flipped);
  mkdirSync(join(folder, 'a-folder.zip'));
  const vite = resolve('node_modules/vite/bin/vite.js');
  const into = ['--outDir', join(folder, 'built')];
  const built = spawnSync(process.execPath, [vite, 'build', '--config', 'vite.recheck.config.ts', ...into]);
  if (built.status !== 0) throw new Error(String(built.stderr));
  copyFileSync(join(folder, 'built', 'recheck.mjs'), join(folder, 'alone.mjs'));
  // It builds: as long as a test may take.
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function rechecked(program: readonly string[], given: readonly string[]) {
  const env = { ...process.env, INIT_CWD: folder };
  const { status, stdout, stderr } = spawnSync(process.execPath, [...program, ...given], {
    env,
    encoding: 'utf8',
  });
  const lines = stdout
    .trim()
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line));
  return { status, lines, stderr };
}

const SOURCE = ['--import', 'tsx', 'src/cli/recheck.ts'];

test('one line for each package, in their order, by several threads; 1 where one does not hold', () => {
  const given = ['flipped.zip', 'whole.zip', 'nowhere.zip', 'a-folder.zip'];
  const { status, lines, stderr } = rechecked(SOURCE, ['--workers', '2', ...given]);
  expect(stderr).toBe('');
  expect(lines).toMatchObject([
    { package: 'flipped.zip', holds: false, signature: 'good' },
    { package: 'whole.zip', holds: true, signature: 'good', signedBy: fingerprint, differences: [] },
    { package: 'nowhere.zip', holds: false, notRechecked: 'no such file' },
    { package: 'a-folder.zip', holds: false, notRechecked: 'a folder, not a package' },
  ]);
  expect(lines[0].differences.length).toBeGreaterThan(0);
  expect(status).toBe(1);
});

test('a clip of which a player gave frames is named, and changes no answer', () => {
  const { status, lines } = rechecked(SOURCE, ['--workers', '1', 'whole.zip', 'played.zip']);
  expect(lines).toMatchObject([{ playedClips: [] }, { holds: true, playedClips: ['invented-6.mp4'] }]);
  expect(status).toBe(0);
});

test('the built file runs with Node alone, and asks for a key where it is told to', () => {
  const alone = join(folder, 'alone.mjs');
  const right = rechecked([alone], ['--signed-by', fingerprint.replaceAll(' ', ''), 'whole.zip']);
  expect(right).toMatchObject({ status: 0, lines: [{ holds: true }], stderr: '' });
  const wrong = rechecked([alone], ['--signed-by', '0000 0000 0000 0000', 'whole.zip', 'whole.zip']);
  expect(wrong).toMatchObject({
    status: 1,
    lines: [
      { holds: false, differences: [{ check: 'signature', code: 'signature/other-key' }] },
      { holds: false },
    ],
  });
});

test.each([
  [[]],
  [['--signed-by', 'nobody', 'whole.zip']],
  [['--workers', '0', 'whole.zip']],
  [['--fast', 'whole.zip']],
  [['--time-roots', 'whole.zip', 'whole.zip']],
])('wrong use is 2, with one line that says so: %j', (given) => {
  const { status, lines, stderr } = rechecked(SOURCE, given);
  expect({ status, lines }).toEqual({ status: 2, lines: [] });
  expect(stderr.trim().split('\n')).toHaveLength(1);
});

test('what an auditor signed is held against the package', async () => {
  const found = await recheckBytes(Uint8Array.from(readFileSync(join(folder, 'whole.zip'))));
  const said = recheckDocument({ ...found, manifestSha256: found.manifestSha256 ?? '' }, null, {
    madeAt: '2026-05-14T08:00:00.000Z',
    engine: '0.1.0',
  });
  const signature = await sign(subtle, await newKeyPair(), bytesOfDocument(said), 'recheck');
  writeFileSync(join(folder, 'said.json'), JSON.stringify({ document: said, signature }));
  const alone = [join(folder, 'alone.mjs'), '--document', 'said.json'];
  expect(rechecked(alone, ['whole.zip'])).toMatchObject({
    status: 0,
    lines: [{ holds: true, document: { holds: true, otherAnswers: [], signedBy: signature.fingerprint } }],
  });
  expect(rechecked(alone, ['flipped.zip'])).toMatchObject({ status: 1, lines: [{ holds: false }] });
  expect(rechecked(alone, ['whole.zip', 'flipped.zip'])).toMatchObject({ status: 2, lines: [] });
});

test('a time stamp in the line, from the built file, and the way to one: request out, answer in', () => {
  for (const name of [
    'packages/version-1.zip',
    'time-stamps/ec.tsr',
    'time-stamps/root.pem',
    'time-stamps/other-root.pem',
  ])
    copyFileSync(join('tests/fixtures', name), join(folder, basename(name)));
  const stamp = ['--import', 'tsx', 'src/cli/stamp.ts'];
  expect(rechecked(stamp, ['version-1.zip'])).toMatchObject({ status: 0, stderr: '' });
  expect(readFileSync(join(folder, 'version-1.zip.tsq'))).toEqual(
    readFileSync('tests/fixtures/time-stamps/request.tsq'),
  );
  expect(rechecked(stamp, ['version-1.zip', 'ec.tsr'])).toMatchObject({ status: 0, stderr: '' });
  expect(readFileSync(join(folder, 'version-1-stamped.zip'))).toEqual(
    readFileSync('tests/fixtures/packages/version-1-stamped.zip'),
  );
  expect(rechecked(stamp, ['whole.zip', 'ec.tsr'])).toMatchObject({ status: 2, lines: [] });

  const alone = (given: readonly string[]) => rechecked([join(folder, 'alone.mjs')], given).lines;
  const given = ['version-1.zip', 'version-1-stamped.zip'];
  expect(alone(['--time-roots', 'root.pem', ...given])).toMatchObject([
    { checks: { timeStamp: 'none' }, timeStamp: null },
    {
      checks: { timeStamp: 'yes' },
      timeStamp: { authority: 'Invented time stamps, EC, Invented for tests', trust: 'reaches a root' },
    },
  ]);
  expect(alone(['--time-roots', 'other-root.pem', 'version-1-stamped.zip'])).toMatchObject([
    { holds: false, checks: { timeStamp: 'no' }, timeStamp: { trust: 'reaches no root' } },
  ]);
});
