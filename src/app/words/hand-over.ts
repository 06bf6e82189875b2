/** Words for making an evidence package and giving it away. */
import type { PiecesFailure } from '../../evidence/pieces.ts';
import type { MakeFailure } from '../evidence/make-package.ts';
import { storageFailureText } from './failures-storage.ts';
import { sizeText } from './values.ts';

export const HAND_OVER = {
  heading: 'Evidence package',
  sentence:
    'One file with the pictures as the camera made them, the record, the results and the report. Anybody can measure it again, and a later change shows.',
  make: 'Make the evidence package',
  working: 'Measuring again and hashing the pictures …',
  stale: 'The record was changed since the package was made. Make it again.',
  made: (size: string) => `The package is ready, ${size}. It is signed with this device’s key`,
  tellKey:
    'Tell the receiver this key by another way, on the telephone for instance: only so the signature is yours.',
  save: 'Save the package',
  share: 'Share the package',
  pieces: 'Save in pieces for mail',
  pieceSize: 'A mail takes',
  piecesHint: (count: number) =>
    `${count} files. The receiver saves all of them and opens them together: the recheck puts them in order.`,
  proves:
    'The signature shows that nothing was changed since. It does not prove who held the device, that its clock was right, or that the brake was fully applied.',
};

export function piecesMissingText({ missing, count }: PiecesFailure): string {
  return `The package came in ${count} pieces. Not among the files: ${missing.join(', ')}. Choose all of them together.`;
}

export function makeFailureText(failure: MakeFailure): string {
  switch (failure.code) {
    case 'package/files-missing':
      return `A package holds every picture of the record. Not on this device: ${failure.fileNames.join(', ')}. Choose the files and try again.`;
    case 'package/capture-changed':
      return `“${failure.fileName}” is not the file any more that was measured. Choose the unchanged file and try again.`;
    case 'package/too-large':
      return `The package would be ${sizeText(failure.sizeBytes)}; it can be ${sizeText(failure.limitBytes)} at most. Divide the inspection, or measure from shorter clips.`;
    case 'package/too-many-files':
      return `The package would hold ${failure.files} files; it can hold ${failure.limit} at most. Divide the inspection.`;
    case 'package/not-secure':
      return 'This page did not come over a secure connection, and browsers sign nothing there. Open it by its https address.';
    case 'storage/refused':
    case 'storage/full':
      return storageFailureText(failure);
  }
}
