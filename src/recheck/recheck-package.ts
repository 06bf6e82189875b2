/**
 * Rechecks a package: reads it as a stranger's, answers each question with yes or no, recomputes every result from the marks.
 * It takes nothing from the program that wrote the package but the format. A part that does not hold does not end the recheck
 * of the others, unless they rest on it.
 */

import { parseBoundedJson } from '../basics/bounded-json.ts';
import { byName } from '../basics/by-name.ts';
import { fail } from '../basics/result.ts';
import { textFromUtf8 } from '../basics/utf8.ts';
import type { ByteSource } from '../evidence/byte-source.ts';
import { type Hashes, sha256OfText } from '../evidence/hashes.ts';
import type { Manifest } from '../evidence/manifest.ts';
import { type Results, resultsOf } from '../evidence/results.ts';
import { ruleSetsUsed } from '../evidence/rule-sets-used.ts';
import { historyFaults } from '../record/history-chain.ts';
import { openRecord, RECORD_LIMIT_CHARACTERS, RECORD_LIMIT_DEPTH } from '../record/open-record.ts';
import type { InspectionRecord } from '../record/record.ts';
import { timeNotes } from '../record/time-notes.ts';
import { checkSignature, type SignatureTools } from './check-signature.ts';
import { checkTimeStamp } from './check-time-stamp.ts';
import { resultFaults } from './compare-results.ts';
import { MANIFEST, RESULTS } from './documents.ts';
import { checksumFaults, filesFaults, hashFaults } from './file-faults.ts';
import { readContainer } from './read-container.ts';
import { readDocument } from './read-document.ts';
import { type Files, readFiles } from './read-files.ts';
import { CHECKS, type Check, type CheckName, checkOf, NOT_CHECKED, type Recheck } from './recheck.ts';
import { captureFaults, ruleSetFaults } from './record-faults.ts';
import { stampTimeNotes } from './stamp-notes.ts';
import type { TokenTools } from './verify-token.ts';

/** Ten times what a vehicle of twenty axles comes to: more would keep a computer busy for the sake of it. */
const LIMIT_MEASUREMENTS = 500;

export type RecheckTools = SignatureTools & TokenTools & { readonly hashes: Hashes };

export async function recheckPackage(source: ByteSource, tools: RecheckTools): Promise<Recheck> {
  const stored = await readContainer(source);
  if (!stored.ok) return answersOf({ container: checkOf([stored.failure]) });
  const files = await readFiles(source, stored.value, tools.hashes);
  const manifest = readDocument(files, MANIFEST);
  const opened = openedRecord(files);
  const record = opened.ok ? opened.value : null;
  const recorded = readDocument(files, RESULTS);
  const signed = await checkSignature(files, tools);
  const stamped = await checkTimeStamp(files, tools);
  const about = {
    signature: signed.signature,
    timeStamp: stamped.timeStamp,
    manifestSha256: files.get(MANIFEST.path)?.facts.sha256 ?? null,
    madeAt: manifest.ok ? manifest.value.madeAt : null,
    engine: manifest.ok ? manifest.value.engine : null,
    record,
    times: [
      ...(record ? timeNotes(record) : []),
      ...stampTimeNotes(manifest.ok ? manifest.value.madeAt : null, stamped.timeStamp),
    ],
    recorded: recorded.ok ? recorded.value.results : null,
    stored: stored.value,
  };
  return answersOf(
    {
      container: checkOf(checksumFaults(files)),
      ...(manifest.ok
        ? {
            files: checkOf(filesFaults(manifest.value, files)),
            hashes: checkOf(hashFaults(manifest.value, files)),
          }
        : { files: checkOf([{ ...manifest.failure, code: 'files/not-readable' }]) }),
      signature: signed.check,
      timeStamp: stamped.check,
      record: checkOf(opened.ok ? [] : [{ code: 'record/does-not-open', failure: opened.failure }]),
      history: historyCheck(files, tools.hashes),
      ...(record && manifest.ok ? besideRecord(record, manifest.value, files, tools.hashes) : {}),
      ...(record ? { results: resultsCheck(record, recorded) } : {}),
    },
    about,
  );
}

function answersOf(
  made: Partial<Record<CheckName, Check>>,
  about: Partial<Omit<Recheck, 'holds' | 'checks'>> = {},
): Recheck {
  const checks = byName(CHECKS, (name) => made[name] ?? NOT_CHECKED);
  return {
    holds: CHECKS.every((name) => checks[name].answer === 'yes' || checks[name].answer === 'none'),
    checks,
    signature: { state: 'none', fingerprint: null },
    timeStamp: null,
    manifestSha256: null,
    madeAt: null,
    engine: null,
    record: null,
    times: [],
    recorded: null,
    stored: [],
    ...about,
  };
}

function bytesIn(files: Files, path: string): Uint8Array<ArrayBuffer> | null {
  return files.get(path)?.bytes ?? null;
}

function openedRecord(files: Files) {
  const text = textFromUtf8(bytesIn(files, 'record.json') ?? new Uint8Array());
  return text.ok ? openRecord(text.value) : fail(text.failure);
}

function besideRecord(record: InspectionRecord, manifest: Manifest, files: Files, hashes: Hashes) {
  const held = ruleSetsUsed(record, sha256OfText(hashes));
  return {
    captures: checkOf(captureFaults(record, manifest, files)),
    ruleSets: checkOf(ruleSetFaults(record, manifest, held)),
  };
}

/** Of the text as it stands: the chain was made of that, whatever a newer program makes of the record. */
function historyCheck(files: Files, hashes: Hashes): Check {
  const text = textFromUtf8(bytesIn(files, 'record.json') ?? new Uint8Array());
  if (!text.ok) return NOT_CHECKED;
  const bounds = { characters: RECORD_LIMIT_CHARACTERS, depth: RECORD_LIMIT_DEPTH };
  const data = parseBoundedJson(text.value, bounds);
  return data.ok ? checkOf(historyFaults(data.value, sha256OfText(hashes))) : NOT_CHECKED;
}

function resultsCheck(record: InspectionRecord, recorded: ReturnType<typeof readDocument<Results>>): Check {
  if (!recorded.ok) return checkOf([{ ...recorded.failure, code: 'results/not-readable' }]);
  const measurements = record.wheelEnds.reduce((sum, wheelEnd) => sum + wheelEnd.measurements.length, 0);
  if (measurements > LIMIT_MEASUREMENTS)
    return checkOf([{ code: 'results/too-many', measurements, limit: LIMIT_MEASUREMENTS }]);
  return checkOf(resultFaults(recorded.value, resultsOf(record, recorded.value.engine)));
}
