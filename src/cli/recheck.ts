/**
 * npm run --silent recheck -- PACKAGE.zip ...: rechecks evidence packages and prints one JSON line for each, in their order.
 * Exit 0: all hold. 1: one or more do not. 2: wrong use. Runs as its own worker threads where there are many packages.
 */
import { readFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { isMainThread, parentPort } from 'node:worker_threads';
import { type PiecesFailure, wholesOf } from '../evidence/pieces.ts';
import { refuse, standing } from './command-line.ts';
import { type RecheckJob, type RecheckLine, recheckFile } from './recheck-file.ts';
import { recheckMany } from './recheck-pool.ts';

const DOES_NOT_HOLD = 1;
const USE =
  'recheck [--signed-by FINGERPRINT] [--time-roots FILE] [--document RECHECK.json] [--workers NUMBER] PACKAGE.zip ...';

if (isMainThread) await main();
else serve();

function serve(): void {
  parentPort?.on('message', async (job: RecheckJob) => parentPort?.postMessage(await recheckFile(job)));
}

async function main(): Promise<void> {
  const { paths, signedBy, workers, rootsFile, documentFile } = readArguments();
  const timeRoots = rootsFile === undefined ? [] : await rootsIn(rootsFile);
  const document = documentFile === undefined ? null : (await bytesIn(documentFile)).toString('utf8');
  const jobs = wholesOf(paths, (path) => path).map((whole) => {
    if (!whole.ok) return refuse(piecesLine(whole.failure));
    const { name: path, pieces } = whole.value;
    return { path, files: pieces.map((piece) => resolve(standing, piece)), signedBy, timeRoots, document };
  });
  if (document !== null && jobs.length > 1) refuse(`A recheck is of one package: ${USE}`);
  let allHold = true;
  const print = (line: RecheckLine): void => {
    allHold &&= line.holds;
    process.stdout.write(`${JSON.stringify(line)}\n`);
  };
  const workerCount = Math.min(workers, jobs.length);
  if (workerCount === 1) for (const job of jobs) print(await recheckFile(job));
  else await recheckMany(import.meta.url, jobs, workerCount, print);
  process.exitCode = allHold ? 0 : DOES_NOT_HOLD;
}

function readArguments() {
  const given = parsed();
  const {
    'signed-by': key,
    'time-roots': rootsFile,
    document: documentFile,
    workers = `${availableParallelism()}`,
  } = given.values;
  if (given.positionals.length === 0) refuse(`Name one or more packages: ${USE}`);
  if (key !== undefined && !/^[0-9a-f]{16}$/.test(plain(key)))
    refuse(`A fingerprint is 16 hexadecimal digits, in fours or not: ${JSON.stringify(key)} is none.`);
  if (!/^[1-9]\d?$/.test(workers)) refuse(`--workers takes a number from 1 to 99: ${USE}`);
  const signedBy = key === undefined ? null : (plain(key).match(/.{4}/g) ?? []).join(' ');
  return { paths: given.positionals, signedBy, workers: Number(workers), rootsFile, documentFile };
}

async function bytesIn(path: string): Promise<Buffer> {
  return readFile(resolve(standing, path)).catch(() => refuse(`${path} cannot be read.`));
}

async function rootsIn(path: string): Promise<readonly Uint8Array[]> {
  const { readTimeRoots } = await import('../recheck/time-roots.ts');
  const roots = readTimeRoots(await bytesIn(path));
  return roots.ok ? roots.value : refuse(`${path} holds no certificates: PEM, or one DER, is asked for.`);
}

function piecesLine({ name, missing, count }: PiecesFailure): string {
  return `${name} came in ${count} pieces; not named: ${missing.join(', ')}. Name all of them.`;
}

function parsed() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        'signed-by': { type: 'string' },
        'time-roots': { type: 'string' },
        document: { type: 'string' },
        workers: { type: 'string' },
      },
    });
  } catch (error) {
    return refuse(`${error instanceof Error ? error.message : error} Use: ${USE}`);
  }
}

function plain(fingerprint: string): string {
  return fingerprint.replace(/[ -]/g, '').toLowerCase();
}
