/**
 * Where two edges of a chessboard cross, to a small part of a pixel, with its uncertainty.
 *
 * Model    brightness = m + a S(d1 / s) S(d2 / s) + p x + q y, S(t) = 2 P(t) - 1 with the normal distribution's P: two straight
 *          edges, blurred alike; di = (x - cx) cos ti + (y - cy) sin ti the distance from an edge;
 *          unknowns, in order: cx, cy, t1, t2, s, m, a, p, q, lengths in half windows from the window's middle; least squares over a
 *          round window, covariance N^-1 times the mean square residual.
 * Assumes  nothing but the four squares in the window. Ink that runs out, the coding of light and blur change all four alike about
 *          the crossing, so that they do not move it (a camera's sharpening too).
 * Fails    'crossing/unlike' where the window leaves the picture, is too faint, shows something else, or the crossing is not near its middle.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { blurredStep, stepSlope } from './blurred-step.ts';
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

const UNKNOWNS = 9;
const START_BLUR_PX = 1.2;
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
    const fitted = descend(startOf(rough, samples, sign), squaresOver(samples));
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

function squaresOver(samples: readonly Sample[]): (x: Float64Array) => Squares {
  const slopes = new Float64Array(UNKNOWNS);
  return (k) => {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const gradient = new Float64Array(UNKNOWNS);
    let sum = 0;
    const at = (index: number) => k[index] as number;
    const [c1, s1, c2, s2] = [Math.cos(at(2)), Math.sin(at(2)), Math.cos(at(3)), Math.sin(at(3))];
    const [blur, amplitude] = [at(4), at(6)];
    for (const { x, y, level } of samples) {
      const [dx, dy] = [x - at(0), y - at(1)];
      const [d1, d2] = [dx * c1 + dy * s1, dx * c2 + dy * s2];
      const [f1, f2] = [2 * blurredStep(d1 / blur) - 1, 2 * blurredStep(d2 / blur) - 1];
      const by1 = (amplitude * f2 * 2 * stepSlope(d1 / blur)) / blur;
      const by2 = (amplitude * f1 * 2 * stepSlope(d2 / blur)) / blur;
      const residual = at(5) + amplitude * f1 * f2 + at(7) * x + at(8) * y - level;
      slopes[0] = -by1 * c1 - by2 * c2;
      slopes[1] = -by1 * s1 - by2 * s2;
      slopes[2] = by1 * (dy * c1 - dx * s1);
      slopes[3] = by2 * (dy * c2 - dx * s2);
      slopes[4] = (-by1 * d1 - by2 * d2) / blur;
      slopes[5] = 1;
      slopes[6] = f1 * f2;
      slopes[7] = x;
      slopes[8] = y;
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
