/** A photo as an upright picture, with what its EXIF says. */
import { fail, ok, type Result } from '../basics/result.ts';
import type { CaptureFailure } from './capture-failure.ts';
import { type ExifFacts, exifFactsOf, NO_EXIF } from './exif.ts';
import type { PhotoType } from './media-type.ts';
import { decodeUpright } from './photo-decode.browser.ts';
import { photoLayout } from './photo-layout.ts';
import { tooManyPixels } from './picture-limit.ts';
import { failureOfReading, type Reading } from './reading.browser.ts';
import { type Upright, uprightOf } from './upright.ts';

/** A photo is read whole. The largest that phones write is some tens of megabytes. */
const MAX_PHOTO_BYTES = 200 * 2 ** 20;

export type PhotoPicture = {
  /** The caller closes it. */
  readonly picture: ImageBitmap;
  readonly upright: Upright;
  readonly exif: ExifFacts;
};

export async function photoPicture(
  reading: Reading<PhotoType>,
): Promise<Result<PhotoPicture, CaptureFailure>> {
  try {
    return await readPhoto(reading);
  } catch (reason) {
    return fail(failureOfReading(reason, reading, null));
  }
}

async function readPhoto({
  blob,
  mediaType,
  signal,
}: Reading<PhotoType>): Promise<Result<PhotoPicture, CaptureFailure>> {
  if (blob.size > MAX_PHOTO_BYTES)
    return fail({ code: 'captures/photo-too-big', sizeBytes: blob.size, limitBytes: MAX_PHOTO_BYTES });
  const bytes = await blob.arrayBuffer();
  signal.throwIfAborted();
  const layout = photoLayout(new DataView(bytes), mediaType);
  if (!layout.ok) return layout;
  const tooLarge = tooManyPixels(layout.value.stored);
  if (tooLarge) return fail(tooLarge);

  const [range] = layout.value.exif;
  const exif = range ? exifFactsOf(new DataView(bytes, range.begin, range.end - range.begin)) : NO_EXIF;
  const upright = layout.value.ownUpright ?? uprightOf(exif.orientation);
  const picture = await decodeUpright({ bytes, mediaType, layout: layout.value, upright }, signal);
  return picture.ok ? ok({ picture: picture.value, upright, exif }) : picture;
}
