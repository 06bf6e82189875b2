import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { AssistQuestion, AssistSight } from '../../vision/assist-sight.ts';
import { pictureOf } from '../media/picture-of.ts';
import { assists } from '../media/vision.ts';
import type { AssistSearchFailure } from './assists-store.ts';

export type AskedPicture = { readonly capture: Capture; readonly file: Blob; readonly frame: Frame | null };

/** beside: the other picture, where the question is about both. Rejects with an AbortError where the signal ends it. */
export async function askAssist(
  asked: AskedPicture,
  beside: AskedPicture | null,
  question: AssistQuestion,
  signal: AbortSignal,
): Promise<Result<AssistSight, AssistSearchFailure>> {
  const picture = await opened(asked, signal);
  if (!picture.ok) return picture;
  const second = beside && (await opened(beside, signal));
  if (second && !second.ok) {
    picture.value.close();
    return second;
  }
  return await (await assists()).assist(picture.value, second?.value ?? null, question, signal);
}

export const opened = ({ capture, file, frame }: AskedPicture, signal: AbortSignal) =>
  pictureOf(capture, file, frame, signal);
