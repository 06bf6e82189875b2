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
  for (let row = 0; row < rows + 2; row++) {
    let left = (topPx + (row - 1) * stepPx) * widthPx + leftPx - stepPx;
    for (let column = 0; column < wide; column++, left += stepPx) {
      let sum = 0;
      for (let j = 0, at = left; j < stepPx; j++, at += widthPx) sum += sumAlong(values, at, stepPx);
      raw[row * wide + column] = share * sum;
    }
  }
}

/** Written out for the usual counts: a loop would cost more than the sum. */
function sumAlong(values: Uint8Array, at: number, count: number): number {
  const two = (values[at] as number) + (values[at + 1] as number);
  if (count === 2) return two;
  const three = two + (values[at + 2] as number);
  if (count === 3) return three;
  let sum = three + (values[at + 3] as number);
  for (let i = 4; i < count; i++) sum += values[at + i] as number;
  return sum;
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
