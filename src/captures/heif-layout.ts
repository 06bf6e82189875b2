/**
 * A HEIF or AVIF still: size and turn of its primary item, place of its EXIF item.
 * Source: ISO/IEC 23008-12 (ispe, irot, imir) and ISO/IEC 14496-12 8.11 (meta, iloc, iinf, iprp), clauses from memory.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { asciiAt } from './bytes.ts';
import type { Damaged } from './capture-failure.ts';
import { type Box, boxesIn, uintAt } from './heif-boxes.ts';
import { type ItemPlace, itemPlaces } from './heif-items.ts';
import type { ByteRange, PhotoLayout } from './photo-facts.ts';
import { AS_STORED, type SizePx, type Upright } from './upright.ts';

export function heifLayout(view: DataView, mediaType: string): Result<PhotoLayout, Damaged> {
  const damaged = (part: Damaged['part']) => fail({ code: 'captures/damaged', mediaType, part } as const);
  const meta = find(boxesIn(view, 0, view.byteLength), 'meta');
  // Readers find everything through this box, which cameras write in front.
  if (!meta) return damaged('end');
  const parts = boxesIn(view, meta.begin + 4, meta.end);
  const properties = primaryProperties(view, parts);
  const stored = sizeOf(view, properties);
  const iloc = find(parts, 'iloc');
  if (!stored || !iloc) return damaged('index');

  const exif = exifItem(view, parts);
  let exifPlace: ItemPlace | undefined;
  for (const place of itemPlaces(view, iloc)) {
    if (!(place.end <= view.byteLength)) return damaged('end');
    if (place.item === exif) exifPlace ??= place;
  }
  return ok({
    stored,
    exif: tiffRange(view, exifPlace),
    ownUpright: uprightOfProperties(view, properties),
  });
}

function find(boxes: readonly Box[], kind: string): Box | undefined {
  return boxes.find((box) => box.kind === kind);
}

function primaryProperties(view: DataView, parts: readonly Box[]): readonly Box[] {
  const pitm = find(parts, 'pitm');
  const iprp = find(parts, 'iprp');
  if (!pitm || !iprp) return [];
  const primary = uintAt(view, pitm.begin + 4, uintAt(view, pitm.begin, 1) === 0 ? 2 : 4);
  const inside = boxesIn(view, iprp.begin, iprp.end);
  const ipco = find(inside, 'ipco');
  if (!ipco) return [];
  const all = boxesIn(view, ipco.begin, ipco.end);
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

function exifItem(view: DataView, parts: readonly Box[]): number | null {
  const iinf = find(parts, 'iinf');
  if (!iinf) return null;
  const countWidth = uintAt(view, iinf.begin, 1) === 0 ? 2 : 4;
  const boxes = boxesIn(view, iinf.begin + 4 + countWidth, iinf.end);
  for (const infe of boxes) {
    const idWidth = uintAt(view, infe.begin, 1) < 3 ? 2 : 4;
    if (asciiAt(view, infe.begin + 4 + idWidth + 2, 4) === 'Exif')
      return uintAt(view, infe.begin + 4, idWidth);
  }
  return null;
}

/** The item begins with the distance from after that number to the TIFF block. */
function tiffRange(view: DataView, place: ItemPlace | undefined): readonly ByteRange[] {
  if (!place) return [];
  const begin = place.begin + 4 + uintAt(view, place.begin, 4);
  return begin < place.end ? [{ begin, end: place.end }] : [];
}
