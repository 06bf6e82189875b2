/**
 * A HEIF or AVIF still: size and turn of its primary item, place of its EXIF item.
 * Source: ISO/IEC 23008-12 (ispe, irot, imir) and ISO/IEC 14496-12 8.11 (meta, iloc, iinf, iprp), clauses from memory.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { asciiAt } from './bytes.ts';
import type { Damaged } from './capture-failure.ts';
import { type Box, boxesIn, uintAt } from './heif-boxes.ts';
import type { ByteRange, PhotoLayout } from './photo-layout.ts';
import { AS_STORED, type SizePx, type Upright } from './upright.ts';

export function heifLayout(view: DataView, mediaType: string): Result<PhotoLayout, Damaged> {
  const damaged = (part: Damaged['part']) => fail({ code: 'captures/damaged', mediaType, part } as const);
  const file = boxesIn(view, 0, view.byteLength);
  if (!file.whole) return damaged('end');
  const meta = find(file.boxes, 'meta');
  if (!meta) return damaged('index');
  const parts = boxesIn(view, meta.begin + 4, meta.end).boxes;
  const properties = primaryProperties(view, parts);
  const stored = sizeOf(view, properties);
  if (!stored) return damaged('index');
  const exif = exifRange(view, parts);
  return ok({ stored, exif: exif ? [exif] : [], ownUpright: uprightOfProperties(view, properties) });
}

function find(boxes: readonly Box[], kind: string): Box | undefined {
  return boxes.find((box) => box.kind === kind);
}

function primaryProperties(view: DataView, parts: readonly Box[]): readonly Box[] {
  const pitm = find(parts, 'pitm');
  const iprp = find(parts, 'iprp');
  if (!pitm || !iprp) return [];
  const primary = uintAt(view, pitm.begin + 4, uintAt(view, pitm.begin, 1) === 0 ? 2 : 4);
  const inside = boxesIn(view, iprp.begin, iprp.end).boxes;
  const ipco = find(inside, 'ipco');
  if (!ipco) return [];
  const all = boxesIn(view, ipco.begin, ipco.end).boxes;
  return inside
    .filter((box) => box.kind === 'ipma')
    .flatMap((ipma) => propertyNumbers(view, ipma, primary))
    .map((number) => all[number - 1])
    .filter((box) => box !== undefined);
}

/** The item's properties by number from 1, in the order in which they are to be applied. */
function propertyNumbers(view: DataView, ipma: Box, item: number): number[] {
  const idWidth = uintAt(view, ipma.begin, 1) === 0 ? 2 : 4;
  const wide = (uintAt(view, ipma.begin + 3, 1) & 1) === 1;
  const entries = uintAt(view, ipma.begin + 4, 4);
  let at = ipma.begin + 8;
  for (let i = 0; i < entries && at + idWidth < ipma.end; i++) {
    const id = uintAt(view, at, idWidth);
    const count = uintAt(view, at + idWidth, 1);
    const step = wide ? 2 : 1;
    at += idWidth + 1;
    if (id === item && at + count * step <= ipma.end)
      return Array.from(
        { length: count },
        (_, k) => uintAt(view, at + k * step, step) & (wide ? 0x7fff : 0x7f),
      );
    at += count * step;
  }
  return [];
}

function sizeOf(view: DataView, properties: readonly Box[]): SizePx | null {
  const ispe = find(properties, 'ispe');
  if (!ispe) return null;
  const widthPx = uintAt(view, ispe.begin + 4, 4);
  const heightPx = uintAt(view, ispe.begin + 8, 4);
  return widthPx > 0 && heightPx > 0 ? { widthPx, heightPx } : null;
}

/** irot counts quarter turns anticlockwise. Mirroring comes with axis 0 top to bottom, axis 1 left to right. */
function uprightOfProperties(view: DataView, properties: readonly Box[]): Upright {
  const turns: readonly Upright['rotationDeg'][] = [0, 270, 180, 90];
  const irot = find(properties, 'irot');
  const mirrored = properties.some((box) => box.kind === 'imir');
  const rotationDeg = irot ? (turns[uintAt(view, irot.begin, 1) & 3] ?? 0) : 0;
  return rotationDeg === 0 && !mirrored ? AS_STORED : { rotationDeg, mirrored };
}

function exifRange(view: DataView, parts: readonly Box[]): ByteRange | null {
  const iinf = find(parts, 'iinf');
  const iloc = find(parts, 'iloc');
  if (!iinf || !iloc) return null;
  const countWidth = uintAt(view, iinf.begin, 1) === 0 ? 2 : 4;
  const item = boxesIn(view, iinf.begin + 4 + countWidth, iinf.end)
    .boxes.map((infe) => {
      const idWidth = uintAt(view, infe.begin, 1) < 3 ? 2 : 4;
      const isExif = asciiAt(view, infe.begin + 4 + idWidth + 2, 4) === 'Exif';
      return isExif ? uintAt(view, infe.begin + 4, idWidth) : null;
    })
    .find((id) => id !== null);
  const place = item === undefined ? null : placeOf(view, iloc, item);
  if (!place) return null;
  // The item begins with the distance from after that number to the TIFF block.
  const begin = place.begin + 4 + uintAt(view, place.begin, 4);
  return begin < place.end && place.end <= view.byteLength ? { begin, end: place.end } : null;
}

/** Only an item that lies in one piece in the file itself: that is how EXIF is written. */
function placeOf(view: DataView, iloc: Box, item: number): ByteRange | null {
  const version = uintAt(view, iloc.begin, 1);
  const sizes = uintAt(view, iloc.begin + 4, 2);
  const [offsetWidth, lengthWidth, baseWidth] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexWidth = version === 0 ? 0 : sizes & 15;
  const idWidth = version < 2 ? 2 : 4;
  const items = uintAt(view, iloc.begin + 6, idWidth);
  let at = iloc.begin + 6 + idWidth;
  for (let i = 0; i < items && at < iloc.end; i++) {
    const id = uintAt(view, at, idWidth);
    const method = version === 0 ? 0 : uintAt(view, at + idWidth, 2) & 15;
    at += idWidth + (version === 0 ? 0 : 2) + 2;
    const base = uintAt(view, at, baseWidth);
    const extents = uintAt(view, at + baseWidth, 2);
    at += baseWidth + 2;
    const offset = uintAt(view, at + indexWidth, offsetWidth);
    const length = uintAt(view, at + indexWidth + offsetWidth, lengthWidth);
    if (id === item && method === 0 && extents === 1)
      return { begin: base + offset, end: base + offset + length };
    at += extents * (indexWidth + offsetWidth + lengthWidth);
  }
  return null;
}
