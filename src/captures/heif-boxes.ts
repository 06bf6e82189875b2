/** Boxes of the ISO base media file format, ISO/IEC 14496-12 section 4.2 (clause from memory). */
import { asciiAt } from './bytes.ts';

/** A still has some dozen boxes at each level; a file that claims more wants the memory. */
const MAX_BOXES = 10_000;

export type Box = { readonly kind: string; readonly begin: number; readonly end: number };

/** The boxes between two places, as far as they hold. */
export function boxesIn(view: DataView, from: number, to: number): readonly Box[] {
  const boxes: Box[] = [];
  let at = from;
  while (at + 8 <= to && boxes.length < MAX_BOXES) {
    const box = boxAt(view, at, to);
    if (!box) break;
    boxes.push(box);
    at = box.end;
  }
  return boxes;
}

/** Null where it does not hold. */
export function boxAt(view: DataView, at: number, to: number): Box | null {
  const kind = asciiAt(view, at + 4, 4);
  const size = view.getUint32(at);
  if (size === 0) return { kind, begin: at + 8, end: to };
  if (size !== 1) return size < 8 || at + size > to ? null : { kind, begin: at + 8, end: at + size };
  if (at + 16 > to) return null;
  const large = view.getUint32(at + 8) * 2 ** 32 + view.getUint32(at + 12);
  return large < 16 || at + large > to ? null : { kind, begin: at + 16, end: at + large };
}

/** A number of 0, 1, 2, 4 or 8 bytes; NaN where it lies outside or has another width, so that every comparison fails. */
export function uintAt(view: DataView, at: number, width: number): number {
  if (at < 0 || at + width > view.byteLength) return Number.NaN;
  switch (width) {
    case 0:
      return 0;
    case 1:
      return view.getUint8(at);
    case 2:
      return view.getUint16(at);
    case 4:
      return view.getUint32(at);
    case 8:
      return view.getUint32(at) * 2 ** 32 + view.getUint32(at + 4);
    default:
      return Number.NaN;
  }
}
