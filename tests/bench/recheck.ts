/**
 * npm run bench:recheck: how fast the built recheck goes through 200 packages beside sha256sum over the same files in the same
 * run, where the time goes, and whether memory grows with the number or the size of packages. Writes its table into
 * docs/package.md. Needs room for about 3 GB in the temporary folder, and Linux for the memory figures.
 */
import { spawnSync } from 'node:child_process';
import { randomFillSync } from 'node:crypto';
import {
  closeSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ByteSource, sourceOfBytes } from '../../src/evidence/byte-source.ts';
import { NODE_HASHES } from '../../src/evidence/hashes.node.ts';
import { planPackage } from '../../src/evidence/plan-package.ts';
import { sign } from '../../src/evidence/signature.ts';
import { sealHistory } from '../../src/record/history-chain.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import {
  hashOf,
  MEASURED,
  newKeyPair,
  REFUSED,
  sha256,
  smallRecord,
  subtle,
} from '../evidence/small-package.ts';

type Kind = {
  readonly name: string;
  readonly count: number;
  readonly captureBytes: number;
  readonly measurement: string;
};

const MB = 1e6;
/** Twelve captures to a package. */
const KINDS: readonly Kind[] = [
  { name: 'photos, one measurement', count: 200, captureBytes: 0.35 * MB, measurement: MEASURED },
  { name: 'photos, nothing to measure again', count: 200, captureBytes: 0.35 * MB, measurement: REFUSED },
  { name: 'clips, one measurement', count: 40, captureBytes: 4 * MB, measurement: MEASURED },
];

const folder = mkdtempSync(join(tmpdir(), 'strokewitness-bench-'));
const keys = await newKeyPair();
const program = join(folder, 'built', 'recheck.mjs');
const rows: string[] = [];

try {
  run(process.execPath, [
    'node_modules/vite/bin/vite.js',
    'build',
    '--config',
    'vite.recheck.config.ts',
    '--outDir',
    join(folder, 'built'),
  ]);
  for (const kind of KINDS) {
    const files: string[] = [];
    for (let i = 0; i < kind.count; i++) files.push(await written(kind, i));
    rows.push(measured(kind, files));
    for (const file of files) rmSync(file);
  }
  const memory = await memoryRows();
  writeTable(rows, memory);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function written(kind: Pick<Kind, 'captureBytes' | 'measurement'>, number: number): Promise<string> {
  const bytes = randomFillSync(new Uint8Array(kind.captureBytes));
  // Captures of one package are the same bytes turned: made in no time, and no two alike.
  const source = (i: number) => {
    const turned = bytes.slice();
    turned[0] = i;
    return turned;
  };
  const record = smallRecord([kind.measurement]);
  const captures = record.captures.map((capture, i) => {
    const content = source(i);
    return { ...capture, sizeBytes: content.length, sha256: hashOf(content) };
  });
  const numbered: InspectionRecord = { ...record, id: `bench-${number}`, captures };
  const sealed = sealHistory(numbered, { at: '2026-05-12T17:00:00.000Z', by: 'Bench' }, sha256);
  const planned = await planPackage<ByteSource>(
    {
      record: sealed,
      madeAt: '2026-05-12T17:00:01.000Z',
      engine: '0.1.0',
      captures: captures.map((_capture, i) => sourceOfBytes(source(i))),
      stills: [],
      report: null,
    },
    { hashes: NODE_HASHES, sign: (manifest) => sign(subtle, keys, manifest) },
  );
  if (!planned.ok) throw new Error(planned.failure.code);
  const path = join(folder, `${number}.zip`);
  const file = openSync(path, 'w');
  for (const part of planned.value.parts)
    if (part instanceof Uint8Array) writeSync(file, part);
    else for await (const piece of part.read(0, part.sizeBytes)) writeSync(file, piece);
  closeSync(file);
  return path;
}

function measured({ name, count }: Kind, files: readonly string[]): string {
  const bytes = files.reduce((sum, file) => sum + statSync(file).size, 0);
  // Each three times, in turn, and the quickest of each: the machine has other work.
  let sums = Number.POSITIVE_INFINITY;
  let sumsShared = Number.POSITIVE_INFINITY;
  let rechecks = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < 3; turn++) {
    sums = Math.min(
      sums,
      seconds(() => run('sha256sum', files)),
    );
    sumsShared = Math.min(
      sumsShared,
      seconds(() => sumShared(files)),
    );
    rechecks = Math.min(
      rechecks,
      seconds(() => run(process.execPath, [program, ...files])),
    );
  }
  const mbPerS = bytes / MB / rechecks;
  const sumMbPerS = bytes / MB / sums;
  const sharedMbPerS = bytes / MB / sumsShared;
  console.error(name, count, (bytes / MB).toFixed(0), sums.toFixed(2), rechecks.toFixed(2));
  return `| ${name} | ${count} | ${(bytes / MB / count).toFixed(1)} | ${(count / rechecks).toFixed(1)} | ${mbPerS.toFixed(0)} | ${sumMbPerS.toFixed(0)} | ${(mbPerS / sumMbPerS).toFixed(2)} | ${sharedMbPerS.toFixed(0)} | ${(mbPerS / sharedMbPerS).toFixed(2)} |`;
}

async function memoryRows(): Promise<string[]> {
  const small: string[] = [];
  for (let i = 0; i < 200; i++)
    small.push(await written({ captureBytes: 0.05 * MB, measurement: REFUSED }, i));
  const large = await written({ captureBytes: 60 * MB, measurement: REFUSED }, 999);
  return [
    `| 20 packages of ${megabytes(small[0])} MB | ${peakMb(small.slice(0, 20))} |`,
    `| 200 packages of ${megabytes(small[0])} MB | ${peakMb(small)} |`,
    `| 1,000: the 200 five times | ${peakMb(Array.from({ length: 5 }, () => small).flat())} |`,
    `| 3,000: the 200 fifteen times | ${peakMb(Array.from({ length: 15 }, () => small).flat())} |`,
    `| 1 package of ${megabytes(large)} MB | ${peakMb([large])} |`,
  ];
}

function megabytes(path = ''): string {
  return (statSync(path).size / MB).toFixed(1);
}

/** Peak of resident memory, threads included, by the kernel's own count. */
function peakMb(files: readonly string[]): string {
  const report = join(folder, 'peak.txt');
  const code = `process.on('exit', () => require('fs').writeFileSync(${JSON.stringify(report)}, require('fs').readFileSync('/proc/self/status')))`;
  const preload = join(folder, 'peak.cjs');
  writeFileSync(preload, `if (require('worker_threads').isMainThread) ${code}`);
  run(process.execPath, ['--require', preload, program, '--workers', '2', ...files]);
  const peakKb = Number(/VmHWM:\s+(\d+)/.exec(readFileSync(report, 'utf8'))?.[1]);
  return (peakKb / 1000).toFixed(0);
}

function run(command: string, given: readonly string[]): void {
  const { status, stderr } = spawnSync(command, [...given], { encoding: 'utf8', maxBuffer: 2 ** 28 });
  if (status !== 0) throw new Error(`${command}: ${status} ${stderr}`);
}

function sumShared(files: readonly string[]): void {
  const given = ['-0', '-n', '10', '-P', `${availableParallelism()}`, 'sha256sum'];
  const { status } = spawnSync('xargs', given, { input: files.join('\0'), maxBuffer: 2 ** 28 });
  if (status !== 0) throw new Error(`xargs: ${status}`);
}

function seconds(work: () => void): number {
  const before = performance.now();
  work();
  return (performance.now() - before) / 1000;
}

function writeTable(speed: readonly string[], memory: readonly string[]): void {
  const page = new URL('../../docs/package.md', import.meta.url);
  const [BEGIN, END] = ['<!-- recheck:begin -->', '<!-- recheck:end -->'];
  const text = readFileSync(page, 'utf8');
  const [before, rest] = text.split(BEGIN);
  const after = rest?.split(END)[1];
  if (before === undefined || after === undefined)
    throw new Error('docs/package.md lacks the place for the table');
  const table = [
    `Built file, ${availableParallelism()} threads, Node ${process.versions.node}, files in the page cache; sha256sum is one process over the same files, ` +
      `or shared out by xargs -P ${availableParallelism()}. The quickest of three runs each, in turn, in the same run of the bench.`,
    '',
    '| packages | number | MB each | packages/s | MB/s | sha256sum MB/s | share | sha256sum shared out MB/s | share |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...speed,
    '',
    '| peak memory, 2 threads | MB |',
    '| --- | --- |',
    ...memory,
  ].join('\n');
  writeFileSync(page, `${before}${BEGIN}\n${table}\n${END}${after}`);
}
