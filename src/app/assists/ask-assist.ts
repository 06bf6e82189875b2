import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { AssistQuestion, AssistSight } from '../../vision/assist-sight.ts';
import { assists } from '../media/vision.ts';
import type { AssistSearchFailure } from './assists-store.ts';

export type AskedPicture = { readonly capture: Capture; readonly file: Blob; readonly frame: Frame | null };

/** Rejects with an AbortError where the signal ends it. */
export async function askAssist(
  { capture, file, frame }: AskedPicture,
  question: AssistQuestion,
  signal: AbortSignal,
): Promise<Result<AssistSight, AssistSearchFailure>> {
  const { openFrames } = await import('../../frames/open-frames.browser.ts');
  const opened = await openFrames(capture, file, signal);
  if (!opened.ok) return opened;
  try {
    const picture = await opened.value.picture(frame, signal);
    if (!picture.ok) return picture;
    return await (await assists()).assist(picture.value, question, signal);
  } finally {
    opened.value.close();
  }
}
