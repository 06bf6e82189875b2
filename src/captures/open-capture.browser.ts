/** From a file as the person chose it to the facts that the record keeps of it. */
import { assert, fail, ok, type Result } from '../basics/result.ts';
import { type Capture, captureSchema } from './capture.ts';
import type { CaptureFailure } from './capture-failure.ts';
import { fingerprint } from './fingerprint.browser.ts';
import { type ClipType, FIRST_BYTES, isPhotoType, mediaTypeOf, type PhotoType } from './media-type.ts';
import { isoTime } from './movie-time.ts';
import { photoPicture } from './photo-picture.browser.ts';
import { failureOfReading, type Reading } from './reading.browser.ts';

export type OpenedCapture = {
  readonly capture: Capture;
  /** The file itself, unchanged: what openFrames takes beside the capture. */
  readonly blob: Blob;
};

type Facts = Pick<
  Capture,
  'kind' | 'widthPx' | 'heightPx' | 'rotationDeg' | 'takenAt' | 'focal35Mm' | 'clip'
>;

/** Rejects with the signal's reason when aborted. */
export async function openCapture(
  file: File,
  options: { readonly id: string; readonly signal: AbortSignal },
): Promise<Result<OpenedCapture, CaptureFailure>> {
  const reading: Reading = { blob: file, mediaType: 'unknown', signal: options.signal };
  try {
    return await readCapture(file, options);
  } catch (reason) {
    return fail(failureOfReading(reason, reading, null));
  }
}

async function readCapture(
  file: File,
  { id, signal }: { readonly id: string; readonly signal: AbortSignal },
): Promise<Result<OpenedCapture, CaptureFailure>> {
  const kind = mediaTypeOf(new Uint8Array(await file.slice(0, FIRST_BYTES).arrayBuffer()));
  if (!kind.ok) return kind;
  const mediaType = kind.value;
  const facts = isPhotoType(mediaType)
    ? await photoFacts({ blob: file, mediaType, signal })
    : await factsOfClip({ blob: file, mediaType, signal });
  if (!facts.ok) return facts;
  const sha256 = await fingerprint(file, signal);
  // The end of a name tells more than its beginning: it holds the camera's number.
  const fileName = file.name.slice(-255) || id;
  const fileWrittenAt = isoTime(file.lastModified);
  const addedAt = new Date().toISOString();
  const named = { id, fileName, mediaType, sizeBytes: file.size, sha256, fileWrittenAt, addedAt };
  const capture = captureSchema.safeParse({ ...facts.value, ...named });
  assert(capture.success, `the facts of a capture pass its own schema: ${capture.error?.message}`);
  return ok({ capture: capture.data, blob: file });
}

async function photoFacts(reading: Reading<PhotoType>): Promise<Result<Facts, CaptureFailure>> {
  const opened = await photoPicture(reading);
  if (!opened.ok) return opened;
  const { picture, upright, exif } = opened.value;
  const { width: widthPx, height: heightPx } = picture;
  picture.close();
  const { rotationDeg } = upright;
  const { takenAt, focal35Mm } = exif;
  return ok({ kind: 'photo', widthPx, heightPx, rotationDeg, takenAt, focal35Mm, clip: null });
}

async function factsOfClip(reading: Reading<ClipType>): Promise<Result<Facts, CaptureFailure>> {
  const { clipFacts } = await import('./clip-facts.browser.ts');
  const facts = await clipFacts(reading);
  if (!facts.ok) return facts;
  const { size, rotationDeg, codec, ticksPerSecond, clock, takenAt, headerTime, framesBy } = facts.value;
  const { durationS, times } = clock;
  const clip = { ticksPerSecond, frameCount: times.length, durationS, codec, headerTime, framesBy };
  return ok({ kind: 'clip', ...size, rotationDeg, takenAt, focal35Mm: null, clip });
}
