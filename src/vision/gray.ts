/** A gray picture. A place's coordinates count from the corner of the first pixel, whose centre is (0.5, 0.5). */
export type Gray = {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Row by row, 0 to 255. */
  readonly values: Uint8Array;
};

/**
 * Source  luma of ITU-R BT.601-7, 2.5.1: 0.299 R + 0.587 G + 0.114 B (weights from memory), here in whole 65536ths, so that
 *         every engine rounds alike.
 */
export function grayOf(rgba: Uint8ClampedArray, widthPx: number, heightPx: number): Gray {
  const values = new Uint8Array(widthPx * heightPx);
  for (let at = 0, from = 0; at < values.length; at++, from += 4)
    values[at] =
      (19595 * (rgba[from] ?? 0) + 38470 * (rgba[from + 1] ?? 0) + 7471 * (rgba[from + 2] ?? 0) + 32768) >>
      16;
  return { widthPx, heightPx, values };
}
