/**
 * A JPEG's segments. Browsers show a truncated JPEG with a grey end; a measurement must not be taken on one,
 * so the file is followed to its end mark. What a camera appends after it is its own business.
 * Source: ITU-T T.81 annex B (markers); Exif 2.32 4.7.2 (APP1), clauses from memory.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { asciiAt } from './bytes.ts';
import type { Damaged } from './capture-failure.ts';
import type { ByteRange, PhotoLayout } from './photo-facts.ts';
import type { SizePx } from './upright.ts';

/** One is the rule, some programs leave an older one behind, and a hostile file may hold millions. */
const MAX_EXIF = 16;
const EXIF_NAME = 'Exif\0\0';

export function jpegLayout(view: DataView): Result<PhotoLayout, Damaged> {
  const exif: ByteRange[] = [];
  let stored: SizePx | null = null;
  let at = 2;
  while (at + 4 <= view.byteLength) {
    const marker = view.getUint16(at);
    if (marker === 0xffff) {
      at += 1;
      continue;
    }
    const length = view.getUint16(at + 2);
    const end = at + 2 + length;
    if (marker < 0xff01 || length < 2) return damaged('index');
    if (end > view.byteLength) return damaged('end');
    if (marker === 0xffe1 && exif.length < MAX_EXIF && asciiAt(view, at + 4, 6) === EXIF_NAME)
      exif.push({ begin: at + 10, end });
    if (isFrameHeader(marker) && length >= 8)
      stored = { widthPx: view.getUint16(at + 7), heightPx: view.getUint16(at + 5) };
    at = end;
    if (marker !== 0xffda) continue;

    at = endOfScan(view, at);
    if (at + 2 > view.byteLength) return damaged('end');
    if (view.getUint16(at) === 0xffd9)
      return stored && stored.widthPx > 0 && stored.heightPx > 0
        ? ok({ stored, exif, ownUpright: null })
        : damaged('index');
  }
  return damaged('end');
}

function damaged(part: Damaged['part']) {
  return fail({ code: 'captures/damaged', mediaType: 'image/jpeg', part } as const);
}

/** SOF0 to SOF15 without the three markers of other meaning among them. */
function isFrameHeader(marker: number): boolean {
  return marker >= 0xffc0 && marker <= 0xffcf && ![0xffc4, 0xffc8, 0xffcc].includes(marker);
}

/** Where the next marker stands after coded data; restart marks and stuffed zeros belong to the data. */
function endOfScan(view: DataView, begin: number): number {
  const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
  let at = bytes.indexOf(0xff, begin);
  while (at >= 0 && at + 1 < bytes.length) {
    const next = bytes[at + 1] ?? 0;
    if (next === 0xff) at += 1;
    else if (next === 0 || (next >= 0xd0 && next <= 0xd7)) at = bytes.indexOf(0xff, at + 2);
    else return at;
  }
  return bytes.length;
}
