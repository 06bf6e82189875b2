import { fail, ok, type Result } from '../../basics/result.ts';
import { browserHashes } from '../../evidence/hashes.browser.ts';
import { sha256OfText } from '../../evidence/hashes.ts';
import type { PackageFailure } from '../../evidence/plan-package.ts';
import { keyFingerprint } from '../../evidence/signature.ts';
import { sealHistory } from '../../record/history-chain.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import { findFiles } from '../media/find-files.ts';
import { ENGINE_VERSION } from '../report/engine-version.ts';
import { makeReport } from '../report/make-report.browser.ts';
import { paperOfLocale } from '../report/paper-of-locale.ts';
import { deviceKey } from '../storage/device-key.ts';
import type { StorageFailure } from '../storage/storage-failure.ts';
import { choices, media } from '../stores.ts';
import type { PackageAnswer, PackageQuestion } from './package.worker.ts';

export type MakeFailure =
  | PackageFailure
  | StorageFailure
  | { readonly code: 'package/files-missing'; readonly fileNames: readonly string[] }
  /** The page did not come over a connection on which browsers sign. */
  | { readonly code: 'package/not-secure' };

export type MadePackage = {
  /** With the sealing in its history. */
  readonly record: InspectionRecord;
  readonly file: Blob;
  readonly fingerprint: string;
};

export async function makePackage(
  record: InspectionRecord,
  signal: AbortSignal,
): Promise<Result<MadePackage, MakeFailure>> {
  if (!isSecureContext) return fail({ code: 'package/not-secure' });
  const captures = await filesOf(record);
  if (!captures.ok) return captures;
  const keys = await deviceKey();
  if (!keys.ok) return keys;
  const madeAt = new Date().toISOString();
  const sha256 = sha256OfText(await browserHashes());
  const sealed = sealHistory(record, { at: madeAt, by: record.inspector.name }, sha256);
  const fingerprint = await keyFingerprint(crypto.subtle, keys.value.publicKey);
  const { html, stills } = await reportOf(sealed, { madeAt, signedBy: fingerprint }, signal);
  const answer = await askOnce<PackageQuestion, PackageAnswer>(
    () => new Worker(new URL('./package.worker.ts', import.meta.url), { type: 'module' }),
    {
      record: sealed,
      madeAt,
      engine: ENGINE_VERSION,
      captures: captures.value,
      stills,
      report: html,
      keys: keys.value,
    },
    signal,
  );
  if (!answer.ok) return answer;
  const file = new Blob([...answer.value], { type: 'application/zip' });
  return ok({ record: sealed, file, fingerprint });
}

async function filesOf(record: InspectionRecord): Promise<Result<readonly Blob[], MakeFailure>> {
  await findFiles(record);
  const { files } = media.getState();
  const found = record.captures.map(({ fileName, sha256 }) => ({ fileName, file: files[sha256] ?? null }));
  const missing = found.filter(({ file }) => file === null).map(({ fileName }) => fileName);
  if (missing.length > 0) return fail({ code: 'package/files-missing', fileNames: missing });
  return ok(found.flatMap(({ file }) => file ?? []));
}

function reportOf(
  record: InspectionRecord,
  signed: { readonly madeAt: string; readonly signedBy: string },
  signal: AbortSignal,
) {
  const { files } = media.getState();
  return makeReport(
    record,
    { unit: choices.getState().lengthUnit, paper: paperOfLocale(navigator.language), ...signed },
    { fileOf: (sha256) => files[sha256] ?? null, signal, onProgress: () => {} },
  );
}
