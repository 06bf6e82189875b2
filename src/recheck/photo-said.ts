/** What a photo of a package says of itself, read anew from its bytes as the page read it when it was taken in. */
import { type ExifFacts, exifFactsOf, NO_EXIF } from '../captures/exif.ts';
import { FIRST_BYTES, isPhotoType, mediaTypeOf } from '../captures/media-type.ts';
import { photoLayout } from '../captures/photo-layout.ts';

/** The two that a record takes from EXIF and something rests on: when it was taken, and the focal length's prior. */
export type PhotoSaid = Pick<ExifFacts, 'takenAt' | 'focal35Mm'>;

/** Read whole; the largest that phones write is some tens of megabytes. */
export const PHOTO_LIMIT_BYTES = 64e6;

/** Null: no photo, or one that the page would not have taken in. */
export function photoSaid(bytes: Uint8Array): PhotoSaid | null {
  const kind = mediaTypeOf(bytes.subarray(0, FIRST_BYTES));
  if (!kind.ok || !isPhotoType(kind.value)) return null;
  const layout = photoLayout(new DataView(bytes.buffer, bytes.byteOffset, bytes.length), kind.value);
  if (!layout.ok) return null;
  const [range] = layout.value.exif;
  const { takenAt, focal35Mm } = range
    ? exifFactsOf(new DataView(bytes.buffer, bytes.byteOffset + range.begin, range.end - range.begin))
    : NO_EXIF;
  return { takenAt, focal35Mm };
}
