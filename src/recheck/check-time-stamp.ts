import { TIME_STAMP_PATH } from '../evidence/package-path.ts';
import type { Difference } from './difference.ts';
import { MANIFEST } from './documents.ts';
import type { Files } from './read-files.ts';
import { type Check, checkOf, NOT_CHECKED } from './recheck.ts';
import { type TimeStamp, TOKEN_LIMIT_BYTES } from './time-stamp.ts';
import type { TokenTools } from './verify-token.ts';

type Stamped = { readonly check: Check; readonly timeStamp: TimeStamp | null };

export async function checkTimeStamp(files: Files, tools: TokenTools): Promise<Stamped> {
  const said = (differences: readonly Difference[], timeStamp: TimeStamp | null = null) => ({
    check: checkOf(differences),
    timeStamp,
  });
  const file = files.get(TIME_STAMP_PATH);
  if (!file) return { check: { answer: 'none', differences: [] }, timeStamp: null };
  const manifest = files.get(MANIFEST.path);
  if (!manifest?.bytes) return { check: NOT_CHECKED, timeStamp: null };
  const { sizeBytes } = file.facts;
  if (!file.bytes) return said([{ code: 'time-stamp/too-large', sizeBytes, limitBytes: TOKEN_LIMIT_BYTES }]);
  // Only what has a time stamp starts the library that reads it.
  const { verifyToken } = await import('./verify-token.ts');
  const { bytes, facts } = manifest;
  const found = await verifyToken(file.bytes, { bytes, sha256: facts.sha256 }, tools);
  if (!found.ok) return said([found.failure]);
  const { token, stamp } = found.value;
  // In the package it stands alone, so that no byte of it says nothing.
  if (token.length !== file.bytes.length) return said([{ code: 'time-stamp/not-readable' }]);
  const { trust, authority } = stamp;
  return said(trust === 'reaches no root' ? [{ code: 'time-stamp/not-trusted', authority }] : [], stamp);
}
