/** What a photo file says of itself before anything is decoded: its size, where its EXIF lies, whether it is whole. */
import type { Result } from '../basics/result.ts';
import type { Damaged } from './capture-failure.ts';
import { heifLayout } from './heif-layout.ts';
import { jpegLayout } from './jpeg-layout.ts';
import type { PhotoType } from './media-type.ts';
import { pngLayout } from './png-layout.ts';
import type { SizePx, Upright } from './upright.ts';
import { webpLayout } from './webp-layout.ts';

export type PhotoLayout = {
  readonly stored: SizePx;
  /** TIFF blocks that hold EXIF, in the order of the file; nearly always none or one. */
  readonly exif: readonly ByteRange[];
  /** HEIF carries its turn outside EXIF, and decoders apply it; null where EXIF's orientation is what counts. */
  readonly ownUpright: Upright | null;
};

export type ByteRange = { readonly begin: number; readonly end: number };

export function photoLayout(bytes: DataView, mediaType: PhotoType): Result<PhotoLayout, Damaged> {
  switch (mediaType) {
    case 'image/jpeg':
      return jpegLayout(bytes);
    case 'image/png':
      return pngLayout(bytes);
    case 'image/webp':
      return webpLayout(bytes);
    case 'image/heic':
    case 'image/avif':
      return heifLayout(bytes, mediaType);
  }
}
