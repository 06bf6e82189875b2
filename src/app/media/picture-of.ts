import type { Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { Frame } from '../../frames/frame.ts';
import type { FrameFailure } from '../../frames/frame-failure.ts';

/** One picture of a capture, for whoever asked to close. Rejects with an AbortError where the signal ends it. */
export async function pictureOf(
  capture: Capture,
  file: Blob,
  frame: Frame | null,
  signal: AbortSignal,
): Promise<Result<ImageBitmap, CaptureFailure | FrameFailure>> {
  const { openFrames } = await import('../../frames/open-frames.browser.ts');
  const opened = await openFrames(capture, file, signal);
  if (!opened.ok) return opened;
  try {
    return await opened.value.picture(frame, signal);
  } finally {
    opened.value.close();
  }
}
