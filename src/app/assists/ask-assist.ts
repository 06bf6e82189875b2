import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { AssistQuestion, AssistSight } from '../../vision/assist-sight.ts';
import { pictureOf } from '../media/picture-of.ts';
import { assists } from '../media/vision.ts';
import type { AssistSearchFailure } from './assists-store.ts';

export type AskedPicture = { readonly capture: Capture; readonly file: Blob; readonly frame: Frame | null };

/** Rejects with an AbortError where the signal ends it. */
export async function askAssist(
  { capture, file, frame }: AskedPicture,
  question: AssistQuestion,
  signal: AbortSignal,
): Promise<Result<AssistSight, AssistSearchFailure>> {
  const picture = await pictureOf(capture, file, frame, signal);
  if (!picture.ok) return picture;
  return await (await assists()).assist(picture.value, question, signal);
}
