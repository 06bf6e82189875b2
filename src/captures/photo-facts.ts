/** What a photo file says of itself before anything is decoded: its size, where its EXIF lies. */
import type { SizePx, Upright } from './upright.ts';

export type PhotoLayout = {
  readonly stored: SizePx;
  /** TIFF blocks that hold EXIF, in the order of the file; nearly always none or one. */
  readonly exif: readonly ByteRange[];
  /** HEIF carries its turn outside EXIF, and decoders apply it; null where EXIF's orientation is what counts. */
  readonly ownUpright: Upright | null;
};

export type ByteRange = { readonly begin: number; readonly end: number };
