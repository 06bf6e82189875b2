/** A WebP's chunks. Source: RFC 9649 sections 2.3 to 2.7 (clauses from memory). */
import { fail, ok, type Result } from '../basics/result.ts';
import { asciiAt } from './bytes.ts';
import type { Damaged } from './capture-failure.ts';
import type { ByteRange, PhotoLayout } from './photo-facts.ts';
import type { SizePx } from './upright.ts';

export function webpLayout(view: DataView): Result<PhotoLayout, Damaged> {
  if (view.byteLength < 20) return damaged('end');
  const fileEnd = 8 + view.getUint32(4, true);
  if (fileEnd > view.byteLength) return damaged('end');
  let exif: ByteRange | null = null;
  let stored: SizePx | null = null;
  let at = 12;
  while (at + 8 <= fileEnd) {
    const begin = at + 8;
    const end = begin + view.getUint32(at + 4, true);
    const kind = asciiAt(view, at, 4);
    if (end > fileEnd) return damaged('index');
    // The canvas of the extended header comes first and is the size that counts.
    stored ??= sizeOf(view, kind, begin, end);
    if (kind === 'EXIF') exif ??= { begin: hasName(view, begin, end) ? begin + 6 : begin, end };
    at = end + (end % 2);
  }
  return stored ? ok({ stored, exif: exif ? [exif] : [], ownUpright: null }) : damaged('index');
}

function damaged(part: Damaged['part']) {
  return fail({ code: 'captures/damaged', mediaType: 'image/webp', part } as const);
}

/** Some writers put JPEG's name in front of the block. */
function hasName(view: DataView, begin: number, end: number): boolean {
  return end - begin >= 6 && asciiAt(view, begin, 6) === 'Exif\0\0';
}

function sizeOf(view: DataView, kind: string, begin: number, end: number): SizePx | null {
  if (kind === 'VP8X' && end - begin >= 10) {
    const width = view.getUint16(begin + 4, true) + view.getUint8(begin + 6) * 65536;
    const height = view.getUint16(begin + 7, true) + view.getUint8(begin + 9) * 65536;
    return { widthPx: width + 1, heightPx: height + 1 };
  }
  if (kind === 'VP8 ' && end - begin >= 10) {
    const width = view.getUint16(begin + 6, true) & 0x3fff;
    const height = view.getUint16(begin + 8, true) & 0x3fff;
    return width > 0 && height > 0 ? { widthPx: width, heightPx: height } : null;
  }
  if (kind === 'VP8L' && end - begin >= 5) {
    const bits = view.getUint32(begin + 1, true);
    return { widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
  }
  return null;
}
