/** Opens the pictures of a capture whose file is at hand. */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Capture } from '../captures/capture.ts';
import type { CaptureFailure } from '../captures/capture-failure.ts';
import {
  type ClipType,
  FIRST_BYTES,
  isPhotoType,
  mediaTypeOf,
  type PhotoType,
} from '../captures/media-type.ts';
import { photoPicture } from '../captures/photo-picture.browser.ts';
import { failureOfReading, type Reading } from '../captures/reading.browser.ts';
import type { FrameSource } from './frame-source.browser.ts';
import { photoFrames } from './photo-frames.browser.ts';
import { differenceFromRecord } from './same-capture.ts';

/** Rejects with the signal's reason when aborted. The caller closes the source. */
export async function openFrames(
  capture: Capture,
  blob: Blob,
  signal: AbortSignal = new AbortController().signal,
): Promise<Result<FrameSource, CaptureFailure>> {
  try {
    const kind = mediaTypeOf(new Uint8Array(await blob.slice(0, FIRST_BYTES).arrayBuffer()));
    if (!kind.ok) return kind;
    const mediaType = kind.value;
    return isPhotoType(mediaType)
      ? await openPhoto(capture, { blob, mediaType, signal })
      : await openClip(capture, { blob, mediaType, signal });
  } catch (reason) {
    return fail(failureOfReading(reason, { blob, mediaType: capture.mediaType, signal }, null));
  }
}

async function openPhoto(
  capture: Capture,
  reading: Reading<PhotoType>,
): Promise<Result<FrameSource, CaptureFailure>> {
  const opened = await photoPicture(reading);
  if (!opened.ok) return opened;
  const { picture } = opened.value;
  const difference = differenceFromRecord(capture, {
    kind: 'photo',
    widthPx: picture.width,
    heightPx: picture.height,
    clip: null,
  });
  if (!difference) return ok(photoFrames(picture));
  picture.close();
  return fail(difference);
}

async function openClip(
  capture: Capture,
  reading: Reading<ClipType>,
): Promise<Result<FrameSource, CaptureFailure>> {
  const [{ openShownClip }, { clipFrames }, { ClipDecoder }, { PlayedFrames }] = await Promise.all([
    import('../captures/shown-clip.browser.ts'),
    import('./clip-frames.browser.ts'),
    import('./clip-decoder.browser.ts'),
    import('./played-frames.browser.ts'),
  ]);
  const opened = await openShownClip(reading);
  if (!opened.ok) return opened;
  const { clip, player } = opened.value;
  const { size, ticksPerSecond, clock } = clip;
  const found = { ticksPerSecond, frameCount: clock.times.length };
  const difference = differenceFromRecord(capture, { kind: 'clip', ...size, clip: found });
  if (!difference)
    return ok(clipFrames(clip, player ? new PlayedFrames(player, clock) : new ClipDecoder(clip)));
  player?.close();
  clip.close();
  return fail(difference);
}
