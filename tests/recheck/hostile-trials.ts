/** Runs mutated packages and records through the doors that the app and the command line use, and counts what comes of it. */
import { canonicalJson } from '../../src/basics/canonical-json.ts';
import { drawFrom } from '../../src/basics/random.ts';
import type { KeyPair } from '../../src/evidence/signature.ts';
import { historyFaults } from '../../src/record/history-chain.ts';
import { openRecord } from '../../src/record/open-record.ts';
import { assess } from '../../src/record/results.ts';
import { recheckBytes, sha256 } from '../evidence/small-package.ts';
import {
  BYTE_MUTATIONS,
  type Bytes,
  type Mutation,
  mutatedBytes,
  mutatedJson,
  mutatedPackage,
  whole,
} from './mutations.ts';

export type Outcome = 'refused' | 'nothing changed' | 'accepted' | 'crashed';
export type Trial = { readonly outcome: Outcome; readonly seed: number; readonly codes: readonly string[] };

/** The key that must have signed is known to whoever rechecks: a stranger's signature is refused by it. */
export async function packageTrial(
  bytes: Bytes,
  mutation: Mutation,
  seed: number,
  keys: { readonly fingerprint: string | null; readonly stranger: KeyPair },
): Promise<Trial> {
  const mutated = await mutatedPackage(bytes, mutation, drawFrom(seed), keys.stranger);
  if (Buffer.from(mutated).equals(bytes)) return { outcome: 'nothing changed', seed, codes: [] };
  try {
    const { holds, checks } = await recheckBytes(mutated, keys.fingerprint);
    const codes = Object.values(checks).flatMap(({ differences }) => differences.map(({ code }) => code));
    return { outcome: holds ? 'accepted' : 'refused', seed, codes };
  } catch (error) {
    return { outcome: 'crashed', seed, codes: [String(error)] };
  }
}

export type RecordMutation = 'text changed' | 'value replaced';

/** Refused at the record's door, or by its own history where the change makes sense. */
export function recordTrial(text: string, mutation: RecordMutation, seed: number, measured: boolean): Trial {
  const draw = drawFrom(seed);
  const mutated =
    mutation === 'value replaced'
      ? JSON.stringify(mutatedJson(JSON.parse(text), draw))
      : Buffer.from(
          mutatedBytes(
            Uint8Array.from(Buffer.from(text)),
            BYTE_MUTATIONS[whole(draw, BYTE_MUTATIONS.length)] ?? 'bit turned',
            draw,
          ),
        ).toString();
  try {
    const record = openRecord(mutated);
    if (!record.ok) return { outcome: 'refused', seed, codes: [record.failure.code] };
    if (measured)
      for (const wheelEnd of record.value.wheelEnds)
        for (const measurement of wheelEnd.measurements) assess(record.value, wheelEnd, measurement);
    const data: unknown = JSON.parse(mutated);
    const faults = historyFaults(data, sha256);
    if (faults.length > 0) return { outcome: 'refused', seed, codes: faults.map(({ code }) => code) };
    const isSame = canonicalJson(data) === canonicalJson(JSON.parse(text));
    return { outcome: isSame ? 'nothing changed' : 'accepted', seed, codes: [] };
  } catch (error) {
    return { outcome: 'crashed', seed, codes: [String(error)] };
  }
}
