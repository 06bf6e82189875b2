/**
 * Where the surroundings of a place in one picture lie in another, to a small part of a pixel, with its uncertainty.
 *
 * Model    g1(p + d) = c + a g2(q + A d), d over a square window; unknown q (2), A (2 x 2), a, c; least squares, g2 between pixels
 *          by cubic convolution; covariance N^-1 times the mean square residual
 * Assumes  the window shows one nearly flat piece of a surface that looks alike from both places
 * Fails    'patch/unlike' where the window leaves a picture, is faint, looks otherwise, or the fit runs away
 * Source   least squares matching: Gruen, S. Afr. J. of Photogrammetry 14 (1985) 175-187; cubic convolution: Keys, IEEE Trans.
 *          ASSP 29 (1981) 1153-1160 (both from memory)
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { type DescentFailure, descend, type Squares } from './descend.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

/** The other picture's place, and how a step in the one appears there: x by x, x by y, y by x, y by y. */
export type PatchMap = {
  readonly place: Point;
  readonly steps: readonly [number, number, number, number];
};

export type FittedPatch = PatchMap & {
  readonly sigmaPx: number;
  /** 0 to 1: correlation of both windows. */
  readonly likeness: number;
};

export type PatchUnlike = {
  readonly code: 'patch/unlike';
  readonly because: 'out-of-picture' | 'faint' | 'other-things' | 'far-off' | DescentFailure['code'];
};

const UNKNOWNS = 8;
/** Standard deviation of the window, of 255 levels: below it noise rules. */
const LEAST_CONTRAST = 4;
const LEAST_LIKENESS = 0.8;
/** Two hand-held pictures show a flat piece neither half as large nor half as wide. */
const LEAST_SIZE = 0.5;

/** The place must be the centre of a pixel; mostShiftPx: how far the rough map may be off. */
export function fitPatch(
  one: Gray,
  place: Point,
  other: Gray,
  rough: PatchMap,
  window: { readonly halfPx: number; readonly mostShiftPx: number },
): Result<FittedPatch, PatchUnlike> {
  const unlike = (because: PatchUnlike['because']) => fail({ code: 'patch/unlike', because });
  const half = window.halfPx;
  const levels = windowOf(one, place, half);
  if (!levels) return unlike('out-of-picture');
  const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
  const spread = levels.reduce((sum, level) => sum + (level - mean) ** 2, 0);
  if (Math.sqrt(spread / levels.length) < LEAST_CONTRAST) return unlike('faint');
  // Steps count in half windows, the place in pixels from the rough one: sizes near one.
  const start = Float64Array.from([0, 0, ...rough.steps, 1, 0]);
  if (levelsAt(other, rough.place, start, half) === null) return unlike('out-of-picture');
  const fitted = descend(start, squaresOver(levels, other, rough.place, half));
  if (!fitted.ok) return unlike(fitted.failure.code);
  const { x, sum, cofactors } = fitted.value;
  const at = (k: number) => x[k] as number;
  if (!(Math.hypot(at(0), at(1)) < window.mostShiftPx)) return unlike('far-off');
  const size = at(2) * at(5) - at(3) * at(4);
  if (!(size > LEAST_SIZE ** 2 && size < 1 / LEAST_SIZE ** 2 && at(6) > 0)) return unlike('other-things');
  const likeness = Math.sqrt(Math.max(0, 1 - sum / spread));
  if (!(likeness > LEAST_LIKENESS)) return unlike('other-things');
  const variance = (sum / (levels.length - UNKNOWNS)) * OF_PIXELS_ALIKE;
  return ok({
    place: [rough.place[0] + at(0), rough.place[1] + at(1)],
    steps: [at(2), at(3), at(4), at(5)],
    sigmaPx: Math.sqrt(variance * widest(cofactors)),
    likeness,
  });
}

/** Residuals of neighbouring pixels are alike (blur, coding, what the model leaves out), so that fewer of them are witnesses. */
const OF_PIXELS_ALIKE = 4;

/** Of an edge, the place along it is open: the larger axis of the ellipse of error counts, not the mean. */
function widest(cofactors: Float64Array): number {
  const [xx, xy, yy] = [cofactors[0], cofactors[UNKNOWNS], cofactors[UNKNOWNS + 1]] as [
    number,
    number,
    number,
  ];
  return (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
}

/** Of areas. */
export const sizeOf = ([xx, xy, yx, yy]: PatchMap['steps']): number => xx * yy - xy * yx;

/** From the other picture back. */
export function inverseSteps(steps: PatchMap['steps']): PatchMap['steps'] {
  const [xx, xy, yx, yy] = steps;
  const size = sizeOf(steps);
  return [yy / size, -xy / size, -yx / size, xx / size];
}

export function shown(map: PatchMap, [dx, dy]: Point): Point {
  const [xx, xy, yx, yy] = map.steps;
  return [map.place[0] + xx * dx + xy * dy, map.place[1] + yx * dx + yy * dy];
}

function windowOf(gray: Gray, [x, y]: Point, half: number): Float64Array | null {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const outside = column < half || row < half || column + half >= gray.widthPx || row + half >= gray.heightPx;
  if (outside) return null;
  const side = 2 * half + 1;
  return Float64Array.from(
    { length: side * side },
    (_, i) =>
      gray.values[(row - half + Math.floor(i / side)) * gray.widthPx + column - half + (i % side)] as number,
  );
}

type Levels = {
  readonly values: Float64Array;
  readonly byX: Float64Array;
  readonly byY: Float64Array;
};

/** Null where the window leaves the picture. */
function levelsAt(gray: Gray, rough: Point, x: Float64Array, half: number): Levels | null {
  const side = 2 * half + 1;
  const count = side * side;
  const levels = {
    values: new Float64Array(count),
    byX: new Float64Array(count),
    byY: new Float64Array(count),
  };
  const cubic = new Float64Array(8);
  for (let i = 0; i < count; i++) {
    const [dx, dy] = [(i % side) - half, Math.floor(i / side) - half];
    const px = rough[0] + (x[0] as number) + (x[2] as number) * dx + (x[3] as number) * dy - 0.5;
    const py = rough[1] + (x[1] as number) + (x[4] as number) * dx + (x[5] as number) * dy - 0.5;
    const [column, row] = [Math.floor(px), Math.floor(py)];
    if (!(column >= 1 && row >= 1 && column < gray.widthPx - 2 && row < gray.heightPx - 2)) return null;
    sample(gray, column, row, px - column, py - row, cubic);
    levels.values[i] = cubic[0] as number;
    levels.byX[i] = cubic[1] as number;
    levels.byY[i] = cubic[2] as number;
  }
  return levels;
}

/** into: level, its slope along x, along y. */
function sample(gray: Gray, column: number, row: number, u: number, v: number, into: Float64Array): void {
  let [level, byX, byY] = [0, 0, 0];
  for (let j = -1; j <= 2; j++) {
    let [line, slope] = [0, 0];
    const from = (row + j) * gray.widthPx + column;
    for (let i = -1; i <= 2; i++) {
      const value = gray.values[from + i] as number;
      line += value * weight(u - i);
      slope += value * weightSlope(u - i);
    }
    level += line * weight(v - j);
    byX += slope * weight(v - j);
    byY += line * weightSlope(v - j);
  }
  into[0] = level;
  into[1] = byX;
  into[2] = byY;
}

function weight(t: number): number {
  const a = Math.abs(t);
  if (a <= 1) return (1.5 * a - 2.5) * a * a + 1;
  return ((-0.5 * a + 2.5) * a - 4) * a + 2;
}

function weightSlope(t: number): number {
  const a = Math.abs(t);
  const slope = a <= 1 ? (4.5 * a - 5) * a : (-1.5 * a + 5) * a - 4;
  return t < 0 ? -slope : slope;
}

function squaresOver(levels: Float64Array, other: Gray, rough: Point, half: number) {
  const side = 2 * half + 1;
  const slopes = new Float64Array(UNKNOWNS);
  return (x: Float64Array): Squares => {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const gradient = new Float64Array(UNKNOWNS);
    const seen = levelsAt(other, rough, x, half);
    if (!seen) return { sum: Number.POSITIVE_INFINITY, normal, gradient };
    const [gain, offset] = [x[6] as number, x[7] as number];
    let sum = 0;
    for (let i = 0; i < levels.length; i++) {
      const [dx, dy] = [(i % side) - half, Math.floor(i / side) - half];
      const residual = gain * (seen.values[i] as number) + offset - (levels[i] as number);
      const [gx, gy] = [gain * (seen.byX[i] as number), gain * (seen.byY[i] as number)];
      slopes.set([gx, gy, gx * dx, gx * dy, gy * dx, gy * dy, seen.values[i] as number, 1]);
      sum += residual * residual;
      for (let k = 0; k < UNKNOWNS; k++) {
        const sk = slopes[k] as number;
        gradient[k] = (gradient[k] as number) + sk * residual;
        for (let j = 0; j <= k; j++)
          normal[k * UNKNOWNS + j] = (normal[k * UNKNOWNS + j] as number) + sk * (slopes[j] as number);
      }
    }
    return { sum, normal, gradient };
  };
}
