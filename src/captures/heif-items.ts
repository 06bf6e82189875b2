/** Where the items of a HEIF file lie. Source: ISO/IEC 14496-12 8.11.3 (iloc; clause from memory). */
import { type Box, uintAt } from './heif-boxes.ts';

export type ItemPlace = { readonly item: number; readonly begin: number; readonly end: number };

/** Every piece of every item that lies in the file itself, which is how pictures and EXIF are written. */
export function* itemPlaces(view: DataView, iloc: Box): Generator<ItemPlace> {
  const version = uintAt(view, iloc.begin, 1);
  const sizes = uintAt(view, iloc.begin + 4, 2);
  const [offsetWidth, lengthWidth, baseWidth] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexWidth = version === 0 ? 0 : sizes & 15;
  const methodWidth = version === 0 ? 0 : 2;
  const idWidth = version < 2 ? 2 : 4;
  const pieceBytes = indexWidth + offsetWidth + lengthWidth;
  const items = uintAt(view, iloc.begin + 6, idWidth);
  let at = iloc.begin + 6 + idWidth;
  // The counts are a stranger's: the end of the box is what ends both loops.
  for (let i = 0; i < items && at < iloc.end; i++) {
    const item = uintAt(view, at, idWidth);
    const method = uintAt(view, at + idWidth, methodWidth) & 15;
    at += idWidth + methodWidth + 2;
    const base = uintAt(view, at, baseWidth);
    const pieces = uintAt(view, at + baseWidth, 2);
    at += baseWidth + 2;
    for (let piece = 0; piece < pieces && pieceBytes > 0 && at < iloc.end; piece++, at += pieceBytes) {
      const begin = base + uintAt(view, at + indexWidth, offsetWidth);
      if (method === 0)
        yield { item, begin, end: begin + uintAt(view, at + indexWidth + offsetWidth, lengthWidth) };
    }
  }
}
