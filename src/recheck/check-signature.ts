import { type Subtle, verify } from '../evidence/signature.ts';
import type { Difference } from './difference.ts';
import { MANIFEST, SIGNATURE } from './documents.ts';
import { readDocument } from './read-document.ts';
import type { Files } from './read-files.ts';
import { type Check, checkOf, type Recheck } from './recheck.ts';

export type SignatureTools = {
  readonly subtle: Subtle;
  /** Fingerprint of the key that must have signed; null where any will do. */
  readonly signedBy: string | null;
};

type Signed = { readonly check: Check; readonly signature: Recheck['signature'] };

export async function checkSignature(files: Files, { subtle, signedBy }: SignatureTools): Promise<Signed> {
  const said = (
    differences: readonly Difference[],
    state: Recheck['signature']['state'],
    fingerprint: string | null,
  ) => ({
    check: checkOf(differences),
    signature: { state, fingerprint },
  });
  if (!files.has(SIGNATURE.path)) return said([{ code: 'signature/none' }], 'none', null);
  const read = readDocument(files, SIGNATURE);
  if (!read.ok) return said([{ ...read.failure, code: 'signature/not-readable' }], 'bad', null);
  const { fingerprint } = read.value;
  const manifest = files.get(MANIFEST.path)?.bytes;
  const isOfManifest = read.value.signed === 'manifest.json';
  if (!manifest || !isOfManifest || !(await verify(subtle, read.value, manifest)))
    return said([{ code: 'signature/does-not-fit' }], 'bad', fingerprint);
  const differences: Difference[] =
    signedBy === null || signedBy === fingerprint
      ? []
      : [{ code: 'signature/other-key', asked: signedBy, found: fingerprint }];
  return said(differences, 'good', fingerprint);
}
