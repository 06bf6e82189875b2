/**
 * The plane that a tape lies in, as a sheet of millimetres: x from its zero along the blade, y square to it, to the side asked for.
 *
 * Model    least squares line and scale through the graduations; perspective along the blade is left out: places are coarse
 * Assumes  readings that are true
 */
import type { FoundMark } from './assist-sight.ts';
import type { Gray } from './gray.ts';
import type { Sheet } from './guess-rings.ts';
import { levelAt } from './level-at.ts';
import type { Point } from './point.ts';

export type TapePlane = {
  readonly pxPerMm: number;
  readonly pxFromMm: (mm: Point) => Point;
  readonly mmFromPx: (px: Point) => Point;
};

/** side: 1 where y grows to the right of the way along the blade, in a picture whose y grows downwards. */
export function tapePlane(marks: readonly FoundMark[], side: 1 | -1): TapePlane {
  const n = marks.length;
  const mean = (of: (mark: FoundMark) => number) => marks.reduce((sum, mark) => sum + of(mark), 0) / n;
  const [mr, mx, my] = [
    mean(({ readingMm }) => readingMm ?? 0),
    mean(({ placePx }) => placePx[0]),
    mean(({ placePx }) => placePx[1]),
  ];
  const spread = mean(({ readingMm }) => ((readingMm ?? 0) - mr) ** 2);
  const step = [0, 1].map(
    (k) => mean(({ readingMm, placePx }) => ((readingMm ?? 0) - mr) * (placePx[k] as number)) / spread,
  ) as [number, number];
  const pxPerMm = Math.hypot(...step);
  const [ux, uy] = [step[0] / pxPerMm, step[1] / pxPerMm];
  const [vx, vy] = [-uy * side, ux * side];
  const [zx, zy] = [mx - mr * step[0], my - mr * step[1]];
  return {
    pxPerMm,
    pxFromMm: ([x, y]) => [zx + pxPerMm * (x * ux + y * vx), zy + pxPerMm * (x * uy + y * vy)],
    mmFromPx: ([x, y]) => [
      ((x - zx) * ux + (y - zy) * uy) / pxPerMm,
      ((x - zx) * vx + (y - zy) * vy) / pxPerMm,
    ],
  };
}

export type Part = readonly [x0: number, x1: number, y0: number, y1: number];

/** A step for each millimetre, the mean of four places in it. */
export function sheetOf(gray: Gray, { pxFromMm }: TapePlane, [x0, x1, y0, y1]: Part): Sheet {
  const [columns, rows] = [Math.round(x1 - x0), Math.round(y1 - y0)];
  const levels = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      for (const dx of [-0.25, 0.25])
        for (const dy of [-0.25, 0.25]) sum += levelAt(gray, ...pxFromMm([x0 + column + dx, y0 + row + dy]));
      levels[row * columns + column] = sum / 4;
    }
  return { columns, rows, levels };
}
