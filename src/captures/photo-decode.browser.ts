/**
 * Decodes a photo and sets it upright. Browsers differ in which formats they turn by EXIF and in how to stop them, so the
 * turn is taken out of their hands: the bytes they decode have their EXIF spoilt, and the turn is made here.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { CaptureFailure } from './capture-failure.ts';
import { decodeHeic } from './heic.browser.ts';
import type { PhotoType } from './media-type.ts';
import type { PhotoLayout } from './photo-facts.ts';
import { withinTime } from './time-limit.browser.ts';
import { type SizePx, type Upright, uprightFromStored, uprightSize } from './upright.ts';

const DECODE_LIMIT_S = 30;

type StoredPhoto = {
  /** Ours to change. */
  readonly bytes: ArrayBuffer;
  readonly mediaType: PhotoType;
  readonly layout: PhotoLayout;
  readonly upright: Upright;
};

export async function decodeUpright(
  photo: StoredPhoto,
  signal: AbortSignal,
): Promise<Result<ImageBitmap, CaptureFailure>> {
  const { bytes, mediaType, layout, upright } = photo;
  if (layout.ownUpright) return decodeHeif(photo, signal);

  // Without its byte order mark it is no EXIF to anybody.
  for (const { begin, end } of layout.exif) new Uint8Array(bytes).fill(0, begin, Math.min(begin + 2, end));
  const stored = await decode(bytes, mediaType, signal);
  if (!stored || !hasSize(stored, layout.stored)) {
    stored?.close();
    return fail({ code: 'captures/damaged', mediaType, part: 'picture' });
  }
  if (upright.rotationDeg === 0 && !upright.mirrored) return ok(stored);
  try {
    return turned(stored, layout.stored, upright);
  } finally {
    stored.close();
  }
}

/** The turn of a HEIF is part of decoding it; a browser that leaves it out is told by the size. */
async function decodeHeif(
  { bytes, mediaType, layout, upright }: StoredPhoto,
  signal: AbortSignal,
): Promise<Result<ImageBitmap, CaptureFailure>> {
  const picture = await decode(bytes, mediaType, signal);
  if (picture && hasSize(picture, uprightSize(layout.stored, upright))) return ok(picture);
  picture?.close();
  if (mediaType !== 'image/heic')
    return fail({ code: 'captures/codec-not-decoded', codec: 'AVIF', mediaType });
  const fallback = await decodeHeic(bytes, signal);
  return fallback ? ok(fallback) : fail({ code: 'captures/damaged', mediaType, part: 'picture' });
}

function hasSize(picture: ImageBitmap, { widthPx, heightPx }: SizePx): boolean {
  return picture.width === widthPx && picture.height === heightPx;
}

/** Null: this browser makes no picture of it. */
async function decode(
  bytes: ArrayBuffer,
  mediaType: string,
  signal: AbortSignal,
): Promise<ImageBitmap | null> {
  const decoding = createImageBitmap(new Blob([bytes], { type: mediaType }));
  let waiting = true;
  decoding.then(
    (picture) => waiting || picture.close(),
    () => undefined,
  );
  try {
    return await withinTime(decoding, DECODE_LIMIT_S, signal);
  } catch (reason) {
    if (reason instanceof DOMException && reason.name === 'InvalidStateError') return null;
    waiting = false;
    throw reason;
  }
}

function turned(
  stored: ImageBitmap,
  storedSize: SizePx,
  upright: Upright,
): Result<ImageBitmap, CaptureFailure> {
  const size = uprightSize(storedSize, upright);
  const canvas = new OffscreenCanvas(size.widthPx, size.heightPx);
  const context = canvas.getContext('2d');
  if (!context) return fail({ code: 'captures/not-drawn', ...size });
  context.setTransform(...uprightFromStored(storedSize, upright));
  context.fillStyle = 'white';
  context.fillRect(0, 0, storedSize.widthPx, storedSize.heightPx);
  context.drawImage(stored, 0, 0);
  // A canvas beyond the device's limit draws nothing and says nothing.
  if (context.getImageData(0, 0, 1, 1).data[3] !== 255) return fail({ code: 'captures/not-drawn', ...size });
  return ok(canvas.transferToImageBitmap());
}
