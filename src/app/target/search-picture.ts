import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import { TARGET_MARKERS } from '../../references/target-markers.ts';
import type { TargetSight } from '../../vision/target-sight.ts';
import { pictureOf } from '../media/picture-of.ts';
import { vision } from '../media/vision.ts';
import type { SearchFailure } from './target-store.ts';

/** Rejects with an AbortError where the signal ends it. */
export async function searchPicture(
  capture: Capture,
  file: Blob,
  frame: Frame | null,
  signal: AbortSignal,
): Promise<Result<TargetSight, SearchFailure>> {
  const picture = await pictureOf(capture, file, frame, signal);
  if (!picture.ok) return picture;
  return await (await vision()).findTarget(picture.value, TARGET_MARKERS, signal);
}
