/** A PNG's chunks. Source: W3C PNG, third edition, sections 5.3 (chunks) and 11.3 (eXIf), clauses from memory. */
import { fail, ok, type Result } from '../basics/result.ts';
import { asciiAt } from './bytes.ts';
import type { Damaged } from './capture-failure.ts';
import type { ByteRange, PhotoLayout } from './photo-facts.ts';
import type { SizePx } from './upright.ts';

export function pngLayout(view: DataView): Result<PhotoLayout, Damaged> {
  let exif: ByteRange | null = null;
  let stored: SizePx | null = null;
  let at = 8;
  while (at + 12 <= view.byteLength) {
    const begin = at + 8;
    const end = begin + view.getUint32(at);
    const kind = asciiAt(view, at + 4, 4);
    if (end + 4 > view.byteLength) return damaged('end');
    if (kind === 'IHDR' && end - begin >= 8)
      stored = { widthPx: view.getUint32(begin), heightPx: view.getUint32(begin + 4) };
    if (kind === 'eXIf') exif ??= { begin, end };
    if (kind === 'IEND')
      return stored && stored.widthPx > 0 && stored.heightPx > 0
        ? ok({ stored, exif: exif ? [exif] : [], ownUpright: null })
        : damaged('index');
    at = end + 4;
  }
  return damaged('end');
}

function damaged(part: Damaged['part']) {
  return fail({ code: 'captures/damaged', mediaType: 'image/png', part } as const);
}
