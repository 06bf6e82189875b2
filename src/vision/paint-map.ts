/**
 * Hue and light on the push rod, by place across it and along it, once its edges are known; with what lies beside it.
 *
 * Model    places across in half widths from the rod's middle: CORE on the rod, clear of its edges, which mix with what lies behind;
 *          BESIDE clear of it
 */
import type { RodEdges } from './paint-edges.ts';
import { type Hue, hueOf } from './paint-light.ts';
import type { Strip } from './paint-strip.ts';

export const CORE: readonly number[] = [-0.72, -0.54, -0.36, -0.18, 0, 0.18, 0.36, 0.54, 0.72];
export const BESIDE: readonly number[] = [-2.3, -1.85, -1.4, 1.4, 1.85, 2.3];
/** A place is the mean of the cells within so much. */
const HALF_PLACE = 0.09;

export type PaintCell = { readonly hue: Hue; readonly light: number; readonly red: number };

/** By place across, then by column of the strip; null where the picture ends. */
export type PaintMap = {
  readonly core: readonly (readonly (PaintCell | null)[])[];
  readonly beside: readonly (readonly (PaintCell | null)[])[];
};

export function paintMap(strip: Strip, edges: RodEdges, light: Hue): PaintMap {
  const line = (across: number) =>
    Array.from({ length: strip.columns }, (_, column) => {
      const middle = edges.offset + (edges.turn * column) / strip.columns;
      return cellAt(strip, middle + across * edges.half, column, light);
    });
  return { core: CORE.map(line), beside: BESIDE.map(line) };
}

function cellAt(strip: Strip, across: number, column: number, light: Hue): PaintCell | null {
  const { rows, columns, linear, stepAcross } = strip;
  const middle = across / stepAcross + (rows - 1) / 2;
  const reach = Math.max(0.5, HALF_PLACE / stepAcross);
  const [from, to] = [Math.ceil(middle - reach), Math.floor(middle + reach)];
  let [red, green, blue, count] = [0, 0, 0, 0];
  for (let row = from; row <= to; row += 1) {
    if (row < 0 || row >= rows) return null;
    const at = 3 * (row * columns + column);
    red += linear[at] ?? 0;
    green += linear[at + 1] ?? 0;
    blue += linear[at + 2] ?? 0;
    count += 1;
  }
  if (count === 0 || Number.isNaN(red)) return null;
  const [r, g, b] = [red / count, green / count, blue / count];
  return { hue: hueOf(r, g, b, light), light: 0.3 * r + 0.59 * g + 0.11 * b, red: r };
}
