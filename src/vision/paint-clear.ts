/**
 * Whether the push rod can be seen at all where an over-stroke mark would be: light, glare, something in front of it, blur.
 *
 * Model    light: median of the rod's core near the face; glare: share of it at the top of the scale
 *          edges: of both of the rod's edges near the face, the mean of what changes there over what would count as an edge
 *          blur: at the rod's edges, the whole change over the steepest change for a millimetre; median
 */
import { CAP, edgeSteps, type RodEdges } from './paint-edges.ts';
import type { PaintMap } from './paint-map.ts';
import { median } from './paint-numbers.ts';
import { columnOf, type Strip } from './paint-strip.ts';

export type Clear = {
  readonly light: number;
  readonly glare: number;
  readonly edges: number;
  readonly blurMm: number;
  /** Share of what would have to be seen that lies in the picture. */
  readonly inPicture: number;
};

/** Where a mark shows first. */
const NEAR: readonly [fromMm: number, toMm: number] = [0.5, 9];
const BURNT = 0.94;

export function clearOf(strip: Strip, edges: RodEdges, map: PaintMap): Clear {
  const [from, to] = [columnOf(strip, NEAR[0]), columnOf(strip, NEAR[1])];
  const near = map.core.flatMap((line) => line.slice(from, to));
  const cells = near.filter((cell) => cell !== null);
  return {
    light: cells.length === 0 ? 0 : median(cells.map(({ light }) => light)),
    glare: cells.filter(({ light }) => light > BURNT).length / Math.max(1, cells.length),
    edges: edgesNear(strip, edges, from, to),
    blurMm: blurMm(strip, edges),
    inPicture: cells.length / Math.max(1, near.length),
  };
}

function edgesNear(strip: Strip, edges: RodEdges, from: number, to: number): number {
  const steps = edgeSteps(strip);
  let [upper, lower] = [0, 0];
  for (let column = from; column < to; column += 1) {
    const middle = edges.offset + (edges.turn * column) / strip.columns;
    upper += steps(middle - edges.half, column);
    lower += steps(middle + edges.half, column);
  }
  return Math.sqrt((upper / (to - from)) * (lower / (to - from))) / CAP;
}

function blurMm(strip: Strip, edges: RodEdges): number {
  const { rows, columns, linear, stepAcross, stepMm } = strip;
  const widths: number[] = [];
  const reach = Math.max(2, Math.round(0.35 / stepAcross));
  for (let column = columnOf(strip, 2); column < columnOf(strip, 40); column += 2)
    for (const side of [-1, 1]) {
      const across = edges.offset + (edges.turn * column) / columns + side * edges.half;
      const row = Math.round(across / stepAcross + (rows - 1) / 2);
      if (row - reach < 0 || row + reach >= rows) continue;
      const green = (at: number) => linear[3 * (at * columns + column) + 1] ?? Number.NaN;
      const whole = Math.abs(green(row + reach) - green(row - reach));
      let steepest = 0;
      for (let at = row - reach; at < row + reach; at += 1)
        steepest = Math.max(steepest, Math.abs(green(at + 1) - green(at)));
      if (whole > 0.02 && steepest > 0) widths.push((whole / steepest) * stepMm);
    }
  return widths.length < 6 ? 0 : median(widths);
}
