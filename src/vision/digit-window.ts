/**
 * What a window over a blade looks like: how steep its brightness is in each of eight directions, in small cells.
 *
 * Model    slopes by central differences on the strip, smoothed by 1 2 1 both ways; shared between the two nearest of eight directions; summed
 *          over cells by summed tables; each sum over that of the whole window, and the root of it
 * Assumes  a strip as blade-strip.ts makes it
 * Source   Dalal, Triggs: Histograms of oriented gradients, CVPR 2005 (from memory); the root: Arandjelovic, Zisserman, CVPR 2012 (from memory)
 */
import { type BladeStrip, STRIP_STEP_MM } from './blade-strip.ts';

const CELLS_HIGH = 7;
const CELLS_WIDE = 5;
const DIRECTIONS = 8;
export const LOOK_LENGTH = CELLS_HIGH * CELLS_WIDE * DIRECTIONS;
/** Of a digit's height. */
const CELL = 0.17;
/** A digit's outline is some so many of its heights long; of the slopes along that, this share is nothing. */
const OUTLINE = 6;
const NOTHING = 0.1;

/** Summed tables, one for each direction, and one of them all; contrast: of the blade's print. */
export type SlopeSums = {
  readonly columns: number;
  readonly rows: number;
  readonly tables: readonly Float64Array[];
  readonly all: Float64Array;
  readonly contrast: number;
};

/** Quarter turns from a digit that stands upright with the edge above it, clockwise as the strip is drawn. */
export type Turn = 0 | 1 | 2 | 3;

export function slopeSums({ columns, rows, levels }: BladeStrip): SlopeSums {
  const smooth = smoothed(levels, columns);
  const tables = Array.from({ length: DIRECTIONS }, () => new Float64Array((columns + 1) * (rows + 1)));
  const all = new Float64Array((columns + 1) * (rows + 1));
  const sums = new Float64Array(DIRECTIONS + 1);
  for (let row = 1; row <= rows; row++) {
    sums.fill(0);
    for (let column = 1; column <= columns; column++) {
      const at = (row - 1) * columns + column - 1;
      if (row > 1 && row < rows && column > 1 && column < columns) {
        const dx = (smooth[at + 1] as number) - (smooth[at - 1] as number);
        const dy = (smooth[at + columns] as number) - (smooth[at - columns] as number);
        const size = Math.hypot(dx, dy) / 2;
        const turned = ((Math.atan2(dy, dx) / (2 * Math.PI)) * DIRECTIONS + DIRECTIONS) % DIRECTIONS;
        const first = Math.floor(turned);
        const share = turned - first;
        const [near, next] = [first % DIRECTIONS, (first + 1) % DIRECTIONS];
        sums[near] = (sums[near] as number) + size * (1 - share);
        sums[next] = (sums[next] as number) + size * share;
        sums[DIRECTIONS] = (sums[DIRECTIONS] as number) + size;
      }
      const to = row * (columns + 1) + column;
      const above = to - columns - 1;
      for (let k = 0; k < DIRECTIONS; k++) {
        const table = tables[k] as Float64Array;
        table[to] = (table[above] as number) + (sums[k] as number);
      }
      all[to] = (all[above] as number) + (sums[DIRECTIONS] as number);
    }
  }
  return { columns, rows, tables, all, contrast: contrastOf(levels, columns, rows) };
}

function smoothed(levels: Float32Array, columns: number): Float32Array {
  const pass = (from: Float32Array, step: number) =>
    from.map((here, i) => ((from[i - step] ?? here) + 2 * here + (from[i + step] ?? here)) / 4);
  return pass(pass(levels, 1), columns);
}

/** From print to blade, as the dark and the usual levels of its first twelve millimetres. */
function contrastOf(levels: Float32Array, columns: number, rows: number): number {
  const sorted = levels.slice(0, columns * Math.min(rows, Math.round(12 / STRIP_STEP_MM))).sort();
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  return Math.max(8, at(0.6) - at(0.03));
}

/** Centre in columns and rows of the strip. */
export type DigitWindow = { readonly x: number; readonly y: number; readonly heightMm: number };

/** Of all slopes in the window, over what those of a digit are together. */
export function amountIn({ all, ...sums }: SlopeSums, window: DigitWindow, isUpright: boolean): number {
  const high = (CELLS_HIGH * CELL * window.heightMm) / (2 * STRIP_STEP_MM);
  const wide = (CELLS_WIDE * CELL * window.heightMm) / (2 * STRIP_STEP_MM);
  const [dx, dy] = isUpright ? [wide, high] : [high, wide];
  const total = boxIn(all, sums, window.x - dx, window.y - dy, window.x + dx, window.y + dy);
  return total / usualIn(sums.contrast, window.heightMm);
}

const usualIn = (contrast: number, heightMm: number) => (OUTLINE * heightMm * contrast) / STRIP_STEP_MM;

/**
 * into: LOOK_LENGTH values; rows of cells from the top, in each from the left, in each the directions. isUpright: high, else wide: a digit that lies
 * on its side is looked at as it lies, and TURNED tells where the values of the upright one are.
 */
export function lookIn(
  sums: SlopeSums,
  { x, y, heightMm }: DigitWindow,
  isUpright: boolean,
  into: Float32Array,
): void {
  const cell = (CELL * heightMm) / STRIP_STEP_MM;
  const [wide, high] = isUpright ? [CELLS_WIDE, CELLS_HIGH] : [CELLS_HIGH, CELLS_WIDE];
  const [left, top] = [x - (wide / 2) * cell, y - (high / 2) * cell];
  let total = NOTHING * usualIn(sums.contrast, heightMm);
  let at = 0;
  for (let row = 0; row < high; row++)
    for (let column = 0; column < wide; column++) {
      const [x0, y0] = [left + column * cell, top + row * cell];
      const [c0, c1] = [tableAt(sums.columns, x0), tableAt(sums.columns, x0 + cell)];
      const [r0, r1] = [tableAt(sums.rows, y0), tableAt(sums.rows, y0 + cell)];
      const line = sums.columns + 1;
      const [a, b, c, d] = [r0 * line + c0, r0 * line + c1, r1 * line + c0, r1 * line + c1];
      for (let k = 0; k < DIRECTIONS; k++) {
        const table = sums.tables[k] as Float64Array;
        const sum = (table[d] as number) - (table[b] as number) - (table[c] as number) + (table[a] as number);
        into[at++] = sum;
        total += sum;
      }
    }
  for (let i = 0; i < LOOK_LENGTH; i++) into[i] = Math.sqrt(Math.max(0, into[i] as number) / total);
}

const tableAt = (most: number, x: number) => Math.max(0, Math.min(most, Math.round(x + 0.5)));

function boxIn(
  table: Float64Array,
  { columns, rows }: Pick<SlopeSums, 'columns' | 'rows'>,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): number {
  const [c0, c1] = [tableAt(columns, x0), tableAt(columns, x1)];
  const [r0, r1] = [tableAt(rows, y0), tableAt(rows, y1)];
  const line = columns + 1;
  return (
    (table[r1 * line + c1] as number) -
    (table[r0 * line + c1] as number) -
    (table[r1 * line + c0] as number) +
    (table[r0 * line + c0] as number)
  );
}

/** Where in a look each value of the upright digit's look lies, for each turn. */
export const TURNED: readonly Int32Array[] = ([0, 1, 2, 3] as const).map((turn) => {
  const places = new Int32Array(LOOK_LENGTH);
  const wide = turn % 2 === 0 ? CELLS_WIDE : CELLS_HIGH;
  for (let row = 0; row < CELLS_HIGH; row++)
    for (let column = 0; column < CELLS_WIDE; column++)
      for (let k = 0; k < DIRECTIONS; k++) {
        const [r, c] = turnedCell(row, column, turn);
        places[(row * CELLS_WIDE + column) * DIRECTIONS + k] =
          (r * wide + c) * DIRECTIONS + ((k + (turn * DIRECTIONS) / 4) % DIRECTIONS);
      }
  return places;
});

/** The cell that a digit's cell comes to lie on with that many quarter turns clockwise. */
function turnedCell(row: number, column: number, turn: Turn): readonly [number, number] {
  const [lastRow, lastColumn] = [CELLS_HIGH - 1, CELLS_WIDE - 1];
  switch (turn) {
    case 0:
      return [row, column];
    case 1:
      return [column, lastRow - row];
    case 2:
      return [lastRow - row, lastColumn - column];
    case 3:
      return [lastColumn - column, row];
  }
}
