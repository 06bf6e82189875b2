/**
 * What a place of a picture looks like, made ready to be found in other pictures.
 *
 * Model    levels within a circle, window weights (1 - (d / radius)^2)^2 that fall to 0 at its rim, and what moves them (follow-solver.ts)
 * Fails    null where the circle leaves the picture or shows nothing that holds a place
 * Source   inverse compositional fit: Baker, Matthews, Int. J. Computer Vision 56 (2004) 221-255 (from memory)
 */
import { cutInto, newCutout } from './follow-cutout.ts';
import { lessLight, SHAPE, type Solver, solverOf } from './follow-solver.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type Patch = {
  readonly place: Point;
  readonly radiusPx: number;
  readonly stepPx: number;
  /** Of samples, in all that follows. */
  readonly count: number;
  /** From the place, px. */
  readonly byX: Float32Array;
  readonly byY: Float32Array;
  readonly levels: Float32Array;
  readonly weights: Float32Array;
  readonly weightSum: number;
  /** Six for each sample. */
  readonly slopes: Float32Array;
  readonly solver: Solver;
  /** Neighbours whose residuals are alike count as one witness. */
  readonly blocks: Uint16Array;
  readonly blockCount: number;
  /** Mean square slope over variance, per px^2: falls where a picture is blurred. */
  readonly sharpness: number;
};

/** Farther out a sample would weigh less than a fiftieth and cost as much. */
const LEAST_RIM = 0.13;
const BLOCK_SAMPLES = 6;
/** Standard deviation of the levels: below it noise rules. */
const LEAST_CONTRAST = 3;

/**
 * few: of the samples one in four, spread evenly. Smoothed as they are, neighbours are alike, and what coding leaves is so over more of
 * them still: it tells as much.
 */
export function patchOf(
  gray: Gray,
  place: Point,
  radiusPx: number,
  stepPx: number,
  samples: 'all' | 'few' = 'all',
): Patch | null {
  const side = 2 * Math.ceil(radiusPx / stepPx) + 3;
  const cutout = newCutout(side, side, stepPx);
  if (!cutInto(cutout, gray, place)) return null;
  const { values, leftPx, topPx } = cutout;
  const most = side * side;
  const byX = new Float32Array(most);
  const byY = new Float32Array(most);
  const levels = new Float32Array(most);
  const weights = new Float32Array(most);
  const slopes = new Float32Array(most * SHAPE);
  const blocks = new Uint16Array(most);
  const blocksAlong = Math.ceil(side / BLOCK_SAMPLES);
  let count = 0;
  let steep = 0;
  const every = samples === 'few' ? 4 : 1;
  for (let row = 1; row < side - 1; row++)
    for (let column = 1 + ((2 * row) % every); column < side - 1; column += every) {
      const dx = leftPx + (column + 0.5) * stepPx - place[0];
      const dy = topPx + (row + 0.5) * stepPx - place[1];
      const nx = dx / radiusPx;
      const ny = dy / radiusPx;
      const rim = 1 - nx * nx - ny * ny;
      if (rim < LEAST_RIM) continue;
      const weight = every * rim * rim;
      const at = row * side + column;
      const gx = ((values[at + 1] as number) - (values[at - 1] as number)) / (2 * stepPx);
      const gy = ((values[at + side] as number) - (values[at - side] as number)) / (2 * stepPx);
      steep += weight * (gx * gx + gy * gy);
      byX[count] = dx;
      byY[count] = dy;
      levels[count] = values[at] as number;
      weights[count] = weight;
      const k = count * SHAPE;
      slopes[k] = gx;
      slopes[k + 1] = gy;
      slopes[k + 2] = gx * nx;
      slopes[k + 3] = gx * ny;
      slopes[k + 4] = gy * nx;
      slopes[k + 5] = gy * ny;
      blocks[count] = Math.floor(row / BLOCK_SAMPLES) * blocksAlong + Math.floor(column / BLOCK_SAMPLES);
      count++;
    }
  const { weightSum, variance } = lessLight(slopes, levels, weights, count);
  if (!(variance > LEAST_CONTRAST ** 2)) return null;
  const solver = solverOf(slopes, weights, count, radiusPx);
  if (!solver) return null;
  return {
    place,
    radiusPx,
    stepPx,
    count,
    byX,
    byY,
    levels,
    weights,
    weightSum,
    slopes,
    solver,
    blocks,
    blockCount: blocksAlong * blocksAlong,
    sharpness: steep / weightSum / variance,
  };
}

/** Standard uncertainty of the worse direction for noise of one level, px. */
export function sigmaPerLevelPx({ solver: { cofactors } }: Patch): number {
  const [xx, xy, yy] = [cofactors[0], cofactors[1], cofactors[SHAPE + 1]] as [number, number, number];
  return Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
}
