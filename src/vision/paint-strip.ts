/**
 * The region about the push rod, turned so that the rod lies along it, in linear light.
 *
 * Model    cell (row, column): across the rod by half widths, along it by millimetres from the face; the mean of four places of the
 *          picture, each interpolated between the pixels about it
 */
import { LINEAR_LIGHT } from './linear-light.ts';
import { BEHIND_MM, OUT_MM, type PaintRegion, type RodLine, SIDES } from './paint-region.ts';

export type Strip = {
  readonly rows: number;
  readonly columns: number;
  readonly stepMm: number;
  /** Of one cell, in half widths. */
  readonly stepAcross: number;
  /** Red, green and blue of each cell, row by row, 0 to 1 linear; NaN where the picture ends. */
  readonly linear: Float32Array;
};

/** Finer than any edge of paint. */
const FINEST_MM = 0.25;

const LINEAR = Float32Array.from(LINEAR_LIGHT);

export function paintStrip(region: PaintRegion, rod: RodLine): Strip {
  const stepPx = Math.max(1, FINEST_MM * rod.pxPerMm);
  const stepMm = stepPx / rod.pxPerMm;
  const stepAcross = stepPx / rod.halfWidthPx;
  const columns = Math.ceil((BEHIND_MM + OUT_MM) / stepMm);
  const rows = 2 * Math.ceil(SIDES / stepAcross) + 1;
  const linear = new Float32Array(3 * rows * columns);
  const { facePx, way } = rod;
  for (let row = 0, to = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1, to += 3) {
      const alongPx = (column + 0.5) * stepPx - BEHIND_MM * rod.pxPerMm;
      const offPx = (row - (rows - 1) / 2) * stepPx;
      const xPx = facePx[0] + alongPx * way[0] - offPx * way[1] - region.xPx;
      const yPx = facePx[1] + alongPx * way[1] + offPx * way[0] - region.yPx;
      addCell(region, xPx, yPx, stepPx / 4, linear, to);
    }
  return { rows, columns, stepMm, stepAcross, linear };
}

function addCell(
  region: PaintRegion,
  xPx: number,
  yPx: number,
  asidePx: number,
  linear: Float32Array,
  to: number,
): void {
  for (let quarter = 0; quarter < 4; quarter += 1) {
    const x = xPx - 0.5 + (quarter % 2 === 0 ? -asidePx : asidePx);
    const y = yPx - 0.5 + (quarter < 2 ? -asidePx : asidePx);
    const [left, top] = [Math.floor(x), Math.floor(y)];
    if (left < 0 || top < 0 || left + 1 >= region.widthPx || top + 1 >= region.heightPx) {
      linear.fill(Number.NaN, to, to + 3);
      return;
    }
    const [fx, fy] = [x - left, y - top];
    const at = 4 * (top * region.widthPx + left);
    const below = at + 4 * region.widthPx;
    for (let i = 0; i < 3; i += 1) {
      const upper = lightAt(region, at + i) * (1 - fx) + lightAt(region, at + 4 + i) * fx;
      const lower = lightAt(region, below + i) * (1 - fx) + lightAt(region, below + 4 + i) * fx;
      linear[to + i] = (linear[to + i] ?? 0) + (upper * (1 - fy) + lower * fy) / 4;
    }
  }
}

const lightAt = ({ rgba }: PaintRegion, at: number) => LINEAR[rgba[at] ?? 0] ?? 0;

export const columnOf = (strip: Strip, alongMm: number) =>
  Math.round((alongMm + BEHIND_MM) / strip.stepMm - 0.5);
export const alongOf = (strip: Strip, column: number) => (column + 0.5) * strip.stepMm - BEHIND_MM;

/** Columns that so many millimetres along the rod are, one at the least. */
export const cellsOf =
  (strip: Strip) =>
  (mm: number): number =>
    Math.max(1, Math.round(mm / strip.stepMm));
