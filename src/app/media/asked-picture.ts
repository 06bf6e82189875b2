/** A picture of the record with the file that it is read from. */
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { View } from '../../marks/view.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { MediaState } from './media-store.ts';

export type AskedPicture = { readonly capture: Capture; readonly file: Blob; readonly frame: Frame | null };

type Named = Pick<View, 'captureId' | 'frame'>;

/** Names the picture, whatever state it is taken for. */
export const pictureKey = ({ captureId, frame }: Named) => `${captureId} ${frame?.timeTicks ?? 'photo'}`;

/** Null: there is none, or its file is not there. */
export function askedPicture(
  { captures }: InspectionRecord,
  files: MediaState['files'],
  named: Named | null | undefined,
): AskedPicture | null {
  const capture = captures.find(({ id }) => id === named?.captureId);
  const file = capture && files[capture.sha256];
  return named && file ? { capture, file, frame: named.frame } : null;
}
