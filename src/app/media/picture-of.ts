import { ok, type Result } from '../../basics/result.ts';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameFailure } from '../../frames/frame-failure.ts';
import type { AskedPicture } from './asked-picture.ts';

export type PictureFailure = CaptureFailure | FrameFailure;

/** For whoever asked to close. Rejects with an AbortError where the signal ends it. */
export async function pictureOf(
  { capture, file, frame }: AskedPicture,
  signal: AbortSignal,
): Promise<Result<ImageBitmap, PictureFailure>> {
  const { openFrames } = await import('../../frames/open-frames.browser.ts');
  const opened = await openFrames(capture, file, signal);
  if (!opened.ok) return opened;
  try {
    return await opened.value.picture(frame, signal);
  } finally {
    opened.value.close();
  }
}

/** Both, or neither is left open. */
export async function bothPictures(
  first: AskedPicture,
  second: AskedPicture,
  signal: AbortSignal,
): Promise<Result<readonly [ImageBitmap, ImageBitmap], PictureFailure>> {
  const one = await pictureOf(first, signal);
  if (!one.ok) return one;
  let other: Awaited<ReturnType<typeof pictureOf>> | null = null;
  try {
    other = await pictureOf(second, signal);
    return other.ok ? ok([one.value, other.value]) : other;
  } finally {
    if (!other?.ok) one.value.close();
  }
}
