/**
 * A marker's corners to a small part of a pixel, with their uncertainty: its known cells are fitted to its pixels.
 *
 * Model    marker-model.ts, by least squares over the pixels from its middle to 0.6 cells beyond its border;
 *          a corner is where the fitted map puts a corner of the border; covariance N^-1 times the mean square residual,
 *          carried to the corner by the map's derivative
 * Assumes  pixel noise that is independent and alike. What is left of the camera's coding of light shifts all edges of a marker
 *          outward or inward alike, which target-plane.ts takes out.
 * Fails    'marker/unlike' where the picture is not the marker's, too faint, cut off, or the fit does not settle.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { type DescentFailure, descend, type Squares } from './descend.ts';
import type { Gray } from './gray.ts';
import { type Homography, homographyOf, inverseOf, mapped } from './homography.ts';
import { CELLS, cellsOf, markerModel, UNKNOWNS } from './marker-model.ts';
import { CELL_CORNERS, type MarkerFrame, type Sample, samplesOf } from './marker-samples.ts';
import { asQuad, type Point, type Quad } from './point.ts';

export type FittedMarker = {
  readonly cornersPx: Quad;
  readonly sigmasPx: readonly number[];
  readonly blurPx: number;
};
export type MarkerUnlike = {
  readonly code: 'marker/unlike';
  readonly because: 'out-of-picture' | 'faint' | 'other-cells' | DescentFailure['code'];
};

/** Wide at first, so that a corner that is off by two pixels is still drawn in. */
const START_BLUR_PX = 1.2;
/** Black to white, of full light. Below it noise, glare and the coding's dark end rule. */
const LEAST_CONTRAST = 0.02;
/** Of black to white: how far pixels may lie from the model (root mean square). Strong noise makes 0.1. */
const MOST_MISFIT = 0.2;
/** Of black to white: how far the mean of a cell's pixels may. Half is as near to the other colour. */
const MOST_CELL_MISFIT = 0.3;
/** A sliver of a cell with one or two pixels says nothing. */
const LEAST_CELL_PIXELS = 4;

export function fitMarker(
  gray: Gray,
  rough: Quad,
  rows: readonly string[],
): Result<FittedMarker, MarkerUnlike> {
  const unlike = (because: MarkerUnlike['because']) => fail({ code: 'marker/unlike', because });
  const frame = frameOf(rough);
  const { middle, half } = frame;
  const cellPx = (2 * half) / CELLS;
  const local = rough.map(([x, y]): Point => [(x - middle[0]) / half, (y - middle[1]) / half]);
  const cellsFromLocal = homographyOf(local, CELL_CORNERS);
  if (!cellsFromLocal) return unlike('descend/singular');
  const samples = samplesOf(gray, cellsFromLocal, frame);
  if (!samples) return unlike('out-of-picture');

  const start = startOf(cellsFromLocal, samples, START_BLUR_PX / cellPx);
  const fitted = descend(start, squaresOver(samples, rows));
  if (!fitted.ok) return unlike(fitted.failure.code);
  const { x, sum, cofactors } = fitted.value;
  const [low, high] = [x[10] as number, x[11] as number];
  if (!(high - low > LEAST_CONTRAST)) return unlike('faint');
  const variance = sum / (samples.length - UNKNOWNS);
  if (Math.sqrt(variance) > MOST_MISFIT * (high - low)) return unlike('other-cells');
  if (worstCell(x, samples, rows) > MOST_CELL_MISFIT * (high - low)) return unlike('other-cells');

  const corners = asQuad(cornersFrom(x));
  return ok({
    cornersPx: asQuad(corners.map(([cx, cy]) => [middle[0] + half * cx, middle[1] + half * cy])),
    sigmasPx: sigmasOf(x, cofactors).map((sigma) => sigma * half * Math.sqrt(variance)),
    blurPx: Math.abs(((x[8] as number) + (x[9] as number)) / 2) * cellPx,
  });
}

function frameOf(rough: Quad): MarkerFrame {
  const mean = (axis: 0 | 1) => rough.reduce((sum, point) => sum + point[axis], 0) / rough.length;
  const sides = rough.map((a, i) => {
    const b = rough[(i + 1) % rough.length] as Point;
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  });
  return {
    middle: [mean(0), mean(1)],
    half: sides.reduce((sum, side) => sum + side, 0) / (2 * rough.length),
  };
}

function startOf(h: Homography, samples: readonly Sample[], blurCells: number): Float64Array {
  const lights = samples.map(({ light }) => light).sort((a, b) => a - b);
  const at = (share: number) => lights[Math.floor(share * (lights.length - 1))] as number;
  const map = h.slice(0, 8).map((value) => value / h[8]);
  return Float64Array.from([...map, blurCells, blurCells, at(0.1), at(0.9), 0, 0]);
}

function squaresOver(samples: readonly Sample[], rows: readonly string[]): (x: Float64Array) => Squares {
  const model = markerModel(cellsOf(rows));
  const slopes = new Float64Array(UNKNOWNS);
  return (unknowns) => {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const gradient = new Float64Array(UNKNOWNS);
    let sum = 0;
    for (const { x, y, light } of samples) {
      const residual = model.brightness(unknowns, x, y, slopes) - light;
      sum += residual * residual;
      for (let i = 0; i < UNKNOWNS; i++) {
        const si = slopes[i] as number;
        gradient[i] = (gradient[i] as number) + si * residual;
        for (let j = 0; j <= i; j++)
          normal[i * UNKNOWNS + j] = (normal[i * UNKNOWNS + j] as number) + si * (slopes[j] as number);
      }
    }
    return { sum, normal, gradient };
  };
}

/** The largest mean residual of a cell, of the white ones round the border too: a covered or another cell has a large one. */
function worstCell(x: Float64Array, samples: readonly Sample[], rows: readonly string[]): number {
  const model = markerModel(cellsOf(rows));
  const slopes = new Float64Array(UNKNOWNS);
  const sums = new Map<string, { sum: number; count: number }>();
  const toCells = [...x.slice(0, 8), 1] as unknown as Homography;
  for (const sample of samples) {
    const key = mapped(toCells, [sample.x, sample.y]).map(Math.floor).join();
    const cell = sums.get(key) ?? { sum: 0, count: 0 };
    cell.sum += model.brightness(x, sample.x, sample.y, slopes) - sample.light;
    cell.count += 1;
    sums.set(key, cell);
  }
  return Math.max(
    ...[...sums.values()].map(({ sum, count }) => Math.abs(sum) / Math.max(count, LEAST_CELL_PIXELS)),
  );
}

/** In half sides from the middle. */
function cornersFrom(x: Float64Array): Point[] {
  const back = inverseOf([...x.slice(0, 8), 1] as unknown as Homography);
  return CELL_CORNERS.map((corner) => mapped(back, corner));
}

/** Per unit of noise, the root mean square of x and y, for each corner; derivatives of the map by small steps. */
function sigmasOf(x: Float64Array, cofactors: Float64Array): number[] {
  const step = 1e-6;
  const at = cornersFrom(x);
  const moves = Array.from({ length: 8 }, (_, k) =>
    cornersFrom(x.map((value, i) => (i === k ? value + step : value))),
  );
  return at.map((corner, index) => {
    const by = (axis: 0 | 1) =>
      moves.map((moved) => (((moved[index] as Point)[axis] as number) - corner[axis]) / step);
    const variance = (slopes: readonly number[]) =>
      slopes.reduce(
        (sum, si, i) =>
          sum + slopes.reduce((row, sj, j) => row + si * sj * (cofactors[i * UNKNOWNS + j] as number), 0),
        0,
      );
    return Math.sqrt((variance(by(0)) + variance(by(1))) / 2);
  });
}
