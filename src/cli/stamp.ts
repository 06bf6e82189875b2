/**
 * npm run --silent stamp -- PACKAGE.zip: writes PACKAGE.zip.tsq, the request that a time stamping authority answers.
 * npm run --silent stamp -- PACKAGE.zip ANSWER.tsr: verifies the answer and writes PACKAGE-stamped.zip with it inside.
 * Prints what it wrote as JSON. Exit 2, with one line, where it cannot.
 */
import { webcrypto } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { open, readFile, stat, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ByteSource } from '../evidence/byte-source.ts';
import { withFileSource } from '../evidence/file-source.node.ts';
import { NODE_HASHES } from '../evidence/hashes.node.ts';
import { timeStampRequest } from '../evidence/time-stamp-request.ts';
import type { Part } from '../evidence/zip-parts.ts';
import { manifestOfPackage, type StampFailure, stampPackage } from '../recheck/stamp-package.ts';
import { TOKEN_LIMIT_BYTES } from '../recheck/time-stamp.ts';
import { refuse, standing } from './command-line.ts';

const USE = 'stamp PACKAGE.zip [ANSWER.tsr]';

const [packagePath, answerPath, ...more] = process.argv.slice(2);
if (packagePath === undefined || more.length > 0)
  refuse(`Name a package, and the answer where there is one: ${USE}`);
const path = resolve(standing, packagePath);
try {
  await withFileSource([path], (source) =>
    answerPath === undefined ? request(source) : stamp(source, resolve(standing, answerPath)),
  );
} catch (error) {
  refuse(error instanceof Error ? error.message : String(error));
}

async function request(source: ByteSource): Promise<void> {
  const manifest = await manifestOfPackage(source, NODE_HASHES);
  if (!manifest.ok) refuseFailure(manifest.failure);
  const { sha256 } = manifest.value;
  const written = `${path}.tsq`;
  await writeFile(written, timeStampRequest(sha256), { flag: 'wx' });
  say({ written, manifestSha256: sha256 });
}

async function stamp(source: ByteSource, answer: string): Promise<void> {
  const { size } = await stat(answer);
  if (size > TOKEN_LIMIT_BYTES) refuse(`${answer} is larger than any time stamp.`);
  const slice = (from: number, to: number): ByteSource => ({
    sizeBytes: to - from,
    read: (begin, end) => source.read(from + begin, from + end),
  });
  const tools = { hashes: NODE_HASHES, subtle: webcrypto.subtle, timeRoots: [] };
  const made = await stampPackage(source, { given: await readFile(answer), slice }, tools);
  if (!made.ok) refuseFailure(made.failure);
  const written = path.replace(/(\.zip)?$/i, '-stamped.zip');
  await (await open(written, 'wx')).close();
  await pipeline(Readable.from(bytesOfParts(made.value.zip.parts)), createWriteStream(written));
  say({ written, timeStamp: made.value.stamp });
}

async function* bytesOfParts(parts: readonly Part<ByteSource>[]): AsyncIterable<Uint8Array> {
  for (const part of parts)
    if (part instanceof Uint8Array) yield part;
    // The source uses its piece of memory again, and a stream holds on to what it was given.
    else for await (const piece of part.read(0, part.sizeBytes)) yield piece.slice();
}

function say(line: object): void {
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

function refuseFailure({ code, ...numbers }: StampFailure): never {
  return refuse([code, ...Object.entries(numbers).map(([name, value]) => `${name} ${value}`)].join(', '));
}
