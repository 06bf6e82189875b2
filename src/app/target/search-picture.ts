import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import { TARGET_MARKERS } from '../../references/target-markers.ts';
import type { TargetSight } from '../../vision/target-sight.ts';
import { vision } from '../media/vision.ts';
import type { SearchFailure } from './target-store.ts';

/** Rejects with an AbortError where the signal ends it. */
export async function searchPicture(
  capture: Capture,
  file: Blob,
  frame: Frame | null,
  signal: AbortSignal,
): Promise<Result<TargetSight, SearchFailure>> {
  const { openFrames } = await import('../../frames/open-frames.browser.ts');
  const opened = await openFrames(capture, file, signal);
  if (!opened.ok) return opened;
  try {
    const picture = await opened.value.picture(frame, signal);
    if (!picture.ok) return picture;
    return await (await vision()).findTarget(picture.value, TARGET_MARKERS, signal);
  } finally {
    opened.value.close();
  }
}
