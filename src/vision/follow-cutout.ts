/**
 * A small part of a picture, each sample the mean of a square of pixels, smoothed a little.
 *
 * Model    binomial (1 2 1) / 4 along and across: what is left is so smooth that a straight line between samples does
 */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

/** Its buffers are filled anew for each picture. Sample (0, 0) covers the square of stepPx from (leftPx, topPx). */
export type Cutout = {
  readonly columns: number;
  readonly rows: number;
  readonly stepPx: number;
  readonly values: Float32Array;
  readonly raw: Float32Array;
  leftPx: number;
  topPx: number;
};

export function newCutout(columns: number, rows: number, stepPx: number): Cutout {
  const values = new Float32Array(columns * rows);
  return {
    columns,
    rows,
    stepPx,
    values,
    raw: new Float32Array((columns + 2) * (rows + 2)),
    leftPx: 0,
    topPx: 0,
  };
}

/** False where it would leave the picture. */
export function cutInto(cutout: Cutout, gray: Gray, [x, y]: Point): boolean {
  const { columns, rows, stepPx } = cutout;
  const left = Math.round(x - (columns * stepPx) / 2);
  const top = Math.round(y - (rows * stepPx) / 2);
  const fits =
    left >= stepPx &&
    top >= stepPx &&
    left + (columns + 1) * stepPx <= gray.widthPx &&
    top + (rows + 1) * stepPx <= gray.heightPx;
  if (!fits) return false;
  cutout.leftPx = left;
  cutout.topPx = top;
  if (stepPx === 1) copySamples(cutout, gray);
  else addSamples(cutout, gray);
  smooth(cutout);
  return true;
}

export function centreOf({ leftPx, topPx, columns, rows, stepPx }: Cutout): Point {
  return [leftPx + (columns * stepPx) / 2, topPx + (rows * stepPx) / 2];
}

function copySamples({ columns, rows, raw, leftPx, topPx }: Cutout, { values, widthPx }: Gray): void {
  const wide = columns + 2;
  for (let row = 0; row < rows + 2; row++) {
    const from = (topPx - 1 + row) * widthPx + leftPx - 1;
    for (let column = 0; column < wide; column++) raw[row * wide + column] = values[from + column] as number;
  }
}

function addSamples({ columns, rows, stepPx, raw, leftPx, topPx }: Cutout, gray: Gray): void {
  const { values, widthPx } = gray;
  const wide = columns + 2;
  const share = 1 / (stepPx * stepPx);
  for (let row = 0; row < rows + 2; row++)
    for (let column = 0; column < wide; column++) {
      let sum = 0;
      let from = (topPx + (row - 1) * stepPx) * widthPx + leftPx + (column - 1) * stepPx;
      for (let j = 0; j < stepPx; j++, from += widthPx)
        for (let i = 0; i < stepPx; i++) sum += values[from + i] as number;
      raw[row * wide + column] = share * sum;
    }
}

function smooth({ columns, rows, values, raw }: Cutout): void {
  const wide = columns + 2;
  for (let row = 0; row < rows; row++) {
    const above = row * wide;
    const here = above + wide;
    const below = here + wide;
    const into = row * columns;
    let last = (raw[above] as number) + 2 * (raw[here] as number) + (raw[below] as number);
    let middle = (raw[above + 1] as number) + 2 * (raw[here + 1] as number) + (raw[below + 1] as number);
    for (let column = 0; column < columns; column++) {
      const next =
        (raw[above + column + 2] as number) +
        2 * (raw[here + column + 2] as number) +
        (raw[below + column + 2] as number);
      values[into + column] = (last + 2 * middle + next) * (1 / 16);
      last = middle;
      middle = next;
    }
  }
}
