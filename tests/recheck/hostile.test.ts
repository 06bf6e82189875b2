/** A few hundred of what `npm run bench:hostile` runs by the ten thousand. */
import { beforeAll, expect, test } from 'vitest';
import type { KeyPair } from '../../src/evidence/signature.ts';
import { sealHistory } from '../../src/record/history-chain.ts';
import { recordText } from '../../src/record/save-record.ts';
import {
  newKeyPair,
  packageBytes,
  REFUSED,
  recheckBytes,
  sha256,
  smallRecord,
} from '../evidence/small-package.ts';
import { packageTrial, recordTrial } from './hostile-trials.ts';
import { BYTE_MUTATIONS, type Bytes, JSON_MUTATIONS } from './mutations.ts';

const record = smallRecord([REFUSED]);
let bytes: Bytes;
let keys: { fingerprint: string; stranger: KeyPair };
beforeAll(async () => {
  bytes = await packageBytes({ record, keys: await newKeyPair() });
  const { signature } = await recheckBytes(bytes);
  keys = { fingerprint: signature.fingerprint ?? '', stranger: await newKeyPair() };
});

test.each([...BYTE_MUTATIONS, ...JSON_MUTATIONS])(
  'no package with %s is accepted, and none breaks the recheck',
  async (mutation) => {
    for (let seed = 0; seed < 20; seed++) {
      const { outcome, codes } = await packageTrial(bytes, mutation, seed, keys);
      expect(['refused', 'nothing changed'], `seed ${seed}: ${codes}`).toContain(outcome);
    }
  },
);

test.each(['text changed', 'value replaced'] as const)(
  'no sealed record with its %s is accepted, and none breaks its door',
  (mutation) => {
    const text = recordText(sealHistory(record, { at: '2026-05-12T17:00:00.000Z', by: 'R. Ames' }, sha256));
    for (let seed = 0; seed < 60; seed++) {
      const { outcome, codes } = recordTrial(text, mutation, seed, true);
      expect(['refused', 'nothing changed'], `seed ${seed}: ${codes}`).toContain(outcome);
    }
  },
);
