/**
 * Where two edges of a chessboard cross, to a small part of a pixel, with its uncertainty.
 *
 * Model    crossing-model.ts, lengths in half windows from the window's middle; least squares over a round window, covariance
 *          N^-1 times the mean square residual.
 * Assumes  nothing but the four squares in the window. Ink that runs out, the coding of light and blur change all four alike about
 *          the crossing, so that they do not move it (a camera's sharpening too).
 * Fails    'crossing/unlike' where the window leaves the picture, is too faint, shows something else, or the crossing is not near its middle.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { crossingModel, UNKNOWNS } from './crossing-model.ts';
import { type DescentFailure, descend, type Squares } from './descend.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type Crossing = { readonly placePx: Point; readonly sigmaPx: number };
export type CrossingUnlike = {
  readonly code: 'crossing/unlike';
  readonly because: 'out-of-picture' | 'faint' | 'other-things' | 'far-off' | DescentFailure['code'];
};

/** What is known before: the place, and how the two edges that cross there run (rad from the x axis). */
export type RoughCrossing = {
  readonly placePx: Point;
  readonly edgesRad: readonly [number, number];
  readonly halfWindowPx: number;
};

const START_BLUR_PX = 1.2;
/** Standard deviation across a pixel: 1 / sqrt(12). */
const PIXEL_BLUR_PX = 0.29;
/** Black to white, of 255 levels. */
const LEAST_CONTRAST = 20;
/** Of black to white: how far pixels may lie from the model (root mean square). */
const MOST_MISFIT = 0.12;
/** Of the half window: what a rough place may be off. */
const MOST_SHIFT = 0.75;

type Sample = { readonly x: number; readonly y: number; readonly level: number };

export function fitCrossing(gray: Gray, rough: RoughCrossing): Result<Crossing, CrossingUnlike> {
  const unlike = (because: CrossingUnlike['because']) => fail({ code: 'crossing/unlike', because });
  const half = rough.halfWindowPx;
  const samples = samplesOf(gray, rough);
  if (!samples) return unlike('out-of-picture');
  const fits = [1, -1].flatMap((sign) => {
    const fitted = descend(startOf(rough, samples, sign), squaresOver(samples, PIXEL_BLUR_PX / half));
    return fitted.ok ? [fitted.value] : [];
  });
  const [first, second] = fits;
  if (!first) return unlike('descend/unsettled');
  const { x, sum, cofactors } = second && second.sum < first.sum ? second : first;
  const [cx, cy, amplitude] = [x[0] as number, x[1] as number, Math.abs(x[6] as number)];
  if (!(Math.hypot(cx, cy) < MOST_SHIFT)) return unlike('far-off');
  if (!(2 * amplitude > LEAST_CONTRAST)) return unlike('faint');
  const variance = sum / (samples.length - UNKNOWNS);
  if (Math.sqrt(variance) > MOST_MISFIT * 2 * amplitude) return unlike('other-things');
  const own = ((cofactors[0] as number) + (cofactors[UNKNOWNS + 1] as number)) / 2;
  return ok({
    placePx: [rough.placePx[0] + half * cx, rough.placePx[1] + half * cy],
    sigmaPx: half * Math.sqrt(variance * own),
  });
}

function samplesOf(gray: Gray, { placePx, halfWindowPx: half }: RoughCrossing): readonly Sample[] | null {
  const [left, top] = [Math.floor(placePx[0] - half), Math.floor(placePx[1] - half)];
  const [right, bottom] = [Math.ceil(placePx[0] + half), Math.ceil(placePx[1] + half)];
  if (left < 0 || top < 0 || right >= gray.widthPx || bottom >= gray.heightPx) return null;
  const samples: Sample[] = [];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) {
      const x = (column + 0.5 - placePx[0]) / half;
      const y = (row + 0.5 - placePx[1]) / half;
      if (x * x + y * y <= 1)
        samples.push({ x, y, level: gray.values[row * gray.widthPx + column] as number });
    }
  return samples;
}

function startOf(rough: RoughCrossing, samples: readonly Sample[], sign: number): Float64Array {
  const levels = samples.map(({ level }) => level).sort((a, b) => a - b);
  const at = (share: number) => levels[Math.floor(share * (levels.length - 1))] as number;
  const [low, high] = [at(0.1), at(0.9)];
  const [t1, t2] = rough.edgesRad.map((rad) => rad + Math.PI / 2) as [number, number];
  const blur = START_BLUR_PX / rough.halfWindowPx;
  return Float64Array.from([0, 0, t1, t2, blur, (low + high) / 2, (sign * (high - low)) / 2, 0, 0]);
}

function squaresOver(samples: readonly Sample[], pixelBlur: number): (x: Float64Array) => Squares {
  const slopes = new Float64Array(UNKNOWNS);
  return (unknowns) => {
    const model = crossingModel(unknowns, pixelBlur);
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const gradient = new Float64Array(UNKNOWNS);
    let sum = 0;
    for (const { x, y, level } of samples) {
      const residual = model.brightness(x, y, slopes) - level;
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
