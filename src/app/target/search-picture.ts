import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import { TARGET_MARKERS } from '../../references/target-markers.ts';
import type { TargetSight } from '../../vision/target-sight.ts';
import type { VisionClient } from '../../vision/vision-client.browser.ts';
import type { SearchFailure } from './target-store.ts';

/** Loaded with the first search: whoever uses no target never loads it. */
let client: Promise<VisionClient> | null = null;

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
    client ??= startClient();
    return await (await client).findTarget(picture.value, TARGET_MARKERS, signal);
  } finally {
    opened.value.close();
  }
}

async function startClient(): Promise<VisionClient> {
  const { visionClient } = await import('../../vision/vision-client.browser.ts');
  return visionClient(
    () => new Worker(new URL('../../vision/vision.worker.browser.ts', import.meta.url), { type: 'module' }),
  );
}
