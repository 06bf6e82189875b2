import type { Result } from '../../basics/result.ts';
import type { AssistQuestion, AssistSight } from '../../vision/assist-sight.ts';
import type { AskedPicture } from '../media/asked-picture.ts';
import { bothPictures, pictureOf } from '../media/picture-of.ts';
import { assists } from '../media/vision.ts';
import type { AssistSearchFailure } from './assists-store.ts';

/** beside: the other picture, where the question is about both. Rejects with an AbortError where the signal ends it. */
export async function askAssist(
  asked: AskedPicture,
  beside: AskedPicture | null,
  question: AssistQuestion,
  signal: AbortSignal,
): Promise<Result<AssistSight, AssistSearchFailure>> {
  if (!beside) {
    const picture = await pictureOf(asked, signal);
    return picture.ok ? await (await assists()).assist(picture.value, null, question, signal) : picture;
  }
  const pictures = await bothPictures(asked, beside, signal);
  return pictures.ok ? await (await assists()).assist(...pictures.value, question, signal) : pictures;
}
