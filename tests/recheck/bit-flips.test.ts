import { beforeAll, expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { sourceOfBytes } from '../../src/evidence/byte-source.ts';
import { readContainer, type StoredFile } from '../../src/recheck/read-container.ts';
import { CHECKS } from '../../src/recheck/recheck.ts';
import { newKeyPair, packageBytes, REFUSED, recheckBytes, smallRecord } from '../evidence/small-package.ts';

let whole: Uint8Array<ArrayBuffer>;
let stored: readonly StoredFile[];
beforeAll(async () => {
  whole = await packageBytes({ record: smallRecord([REFUSED]), keys: await newKeyPair() });
  const read = await readContainer(sourceOfBytes(whole));
  if (!read.ok) throw new Error(read.failure.code);
  stored = read.value;
});

/** The files that a report names, and the places in the container. */
async function reported(flipped: Uint8Array): Promise<{ holds: boolean; paths: string[]; bytes: number[] }> {
  const { holds, checks } = await recheckBytes(flipped);
  const all = CHECKS.flatMap((name) => checks[name].differences);
  return {
    holds,
    paths: all.flatMap((one) => ('path' in one ? [one.path] : [])),
    bytes: all.flatMap((one) => ('atByte' in one ? [one.atByte] : [])),
  };
}

function flippedAt(bit: number): Uint8Array {
  const bytes = whole.slice();
  const at = bit >> 3;
  bytes[at] = (bytes[at] ?? 0) ^ (1 << (bit & 7));
  return bytes;
}

test('one bit turned anywhere is reported, and where: in which file, or at which byte of the container', async () => {
  const draw = drawFrom(20260512);
  for (let trial = 0; trial < 150; trial++) {
    const bit = Math.floor(draw.uniform(0, whole.length * 8));
    const at = bit >> 3;
    const { holds, paths, bytes } = await reported(flippedAt(bit));
    expect(holds, `bit ${bit}`).toBe(false);
    const file = stored.find(({ from, sizeBytes }) => at >= from && at < from + sizeBytes);
    if (file) expect(paths, `bit ${bit}`).toContain(file.path);
    else expect(bytes, `bit ${bit}`).toHaveLength(1);
  }
});

test('in a header, the report names the very byte or the header that contradicts it', async () => {
  const [, second] = stored;
  if (!second) throw new Error('no second file');
  const headerAt = second.from - 30 - second.path.length;
  for (let byte = 0; byte < 30 + second.path.length; byte++) {
    const { holds, bytes } = await reported(flippedAt((headerAt + byte) * 8 + (byte % 8)));
    expect(holds).toBe(false);
    expect(bytes).toEqual([headerAt + byte]);
  }
});

test('every bit of the end record and of the last directory entry counts', async () => {
  for (let bit = (whole.length - 22 - 40) * 8; bit < whole.length * 8; bit += 3)
    expect((await reported(flippedAt(bit))).holds, `bit ${bit}`).toBe(false);
});
