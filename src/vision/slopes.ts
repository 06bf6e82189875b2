/**
 * How fast and which way brightness changes, over part of a picture, coarsely.
 *
 * Model    squares of `grain` pixels are averaged; slopes across and down from the squares two apart, three rows of them weighed 1 2 1;
 *          each over its own size and `faint` together: a way rather than a strength, short where the slope is faint
 */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type Slopes = {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  readonly grain: number;
  readonly across: Float32Array;
  readonly down: Float32Array;
};

/** from, to: opposite corners; what lies outside the picture is left out. */
export function slopesIn(gray: Gray, from: Point, to: Point, grain: number, faint: number): Slopes | null {
  const left = Math.max(0, Math.floor(Math.min(from[0], to[0])));
  const top = Math.max(0, Math.floor(Math.min(from[1], to[1])));
  const columns = Math.floor((Math.min(gray.widthPx, Math.max(from[0], to[0])) - left) / grain);
  const rows = Math.floor((Math.min(gray.heightPx, Math.max(from[1], to[1])) - top) / grain);
  if (columns < 8 || rows < 8) return null;
  const level = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      for (let y = 0; y < grain; y++) {
        const at = (top + row * grain + y) * gray.widthPx + left + column * grain;
        for (let x = 0; x < grain; x++) sum += gray.values[at + x] as number;
      }
      level[row * columns + column] = sum / (grain * grain);
    }
  const across = new Float32Array(columns * rows);
  const down = new Float32Array(columns * rows);
  const get = (i: number) => level[i] as number;
  for (let row = 1; row < rows - 1; row++)
    for (let column = 1; column < columns - 1; column++) {
      const i = row * columns + column;
      const [a, b, c] = [i - columns, i, i + columns];
      const dx = (get(a + 1) - get(a - 1) + 2 * (get(b + 1) - get(b - 1)) + get(c + 1) - get(c - 1)) / 8;
      const dy = (get(c - 1) - get(a - 1) + 2 * (get(c) - get(a)) + get(c + 1) - get(a + 1)) / 8;
      const size = Math.sqrt(dx * dx + dy * dy + faint * faint);
      across[i] = dx / size;
      down[i] = dy / size;
    }
  return { left, top, columns, rows, grain, across, down };
}
