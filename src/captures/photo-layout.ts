/** Reads what a photo file says of itself, by its kind. */
import type { Result } from '../basics/result.ts';
import type { Damaged } from './capture-failure.ts';
import { heifLayout } from './heif-layout.ts';
import { jpegLayout } from './jpeg-layout.ts';
import type { PhotoType } from './media-type.ts';
import type { PhotoLayout } from './photo-facts.ts';
import { pngLayout } from './png-layout.ts';
import { webpLayout } from './webp-layout.ts';

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
