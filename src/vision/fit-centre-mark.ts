/**
 * A small round centre mark in a face, as drilled for the lathe: whether there is one, and about where.
 *
 * Model    I = m + p x + q y + S(R - rho) (a + b x / h + c y / h), rho^2 = x^2 + y^2, h^2 = rho^2 + w^2, S the blurred step of width w: the
 *          face with its light falling off, in it a round hole, dark or lit, with one side of its cone brighter than the other;
 *          for a given middle and R the six others follow by linear least squares; middle and R by a search over them, then
 *          Gauss-Newton
 * Assumes  a view not far off square: the hole's ellipse is rounder than its blur
 * Fails    null where the window leaves the picture or nothing is held
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import { blurredStep } from './blurred-step.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

export type CentreMark = {
  readonly placePx: Point;
  readonly radiusPx: number;
  /** Share of the window's variance, the falling light apart, that the hole explains. */
  readonly explained: number;
  readonly depth: number;
  /** Of its darker side, below the face: a hole has one, a spot where rust is gone has none. */
  readonly shadow: number;
};

const LINEAR = 6;
/** The middle, and R. */
const FREE = 3;
const BLUR_PX = 1.1;

type Sample = { readonly x: number; readonly y: number; readonly level: number };
type Fitted = {
  readonly sum: number;
  readonly residuals: Float64Array;
  readonly inside: readonly number[];
};

export function explainedAt(gray: Gray, place: Point, radiusPx: number): number {
  const samples = samplesAbout(gray, place, 2.3 * radiusPx + 1.5, Math.max(1, Math.floor(radiusPx / 3)));
  if (!samples) return 0;
  const plain = fitAt(samples, [0, 0, radiusPx], 3);
  const holed = fitAt(samples, [0, 0, radiusPx], LINEAR);
  return plain && holed ? 1 - holed.sum / Math.max(1e-9, plain.sum) : 0;
}

export function fitCentreMark(gray: Gray, start: Point, startRadiusPx: number): CentreMark | null {
  const origin: Point = [Math.floor(start[0]) + 0.5, Math.floor(start[1]) + 0.5];
  const samples = samplesAbout(gray, origin, 2.3 * startRadiusPx + 2.5);
  if (!samples) return null;
  let k: readonly number[] = [start[0] - origin[0], start[1] - origin[1], startRadiusPx];
  let here = fitAt(samples, k, LINEAR);
  if (!here) return null;
  for (let round = 0; round < 12; round++) {
    const slopes = k
      .map((_, i) => i)
      .map((i) => {
        const step = 0.05;
        const moved = k.map((value, j) => (j === i ? value + step : value));
        const there = fitAt(samples, moved, LINEAR);
        return there
          ? there.residuals.map((r, n) => (r - ((here as Fitted).residuals[n] as number)) / step)
          : null;
      });
    const normal = new Float64Array(FREE * FREE);
    const right = new Float64Array(FREE);
    for (let i = 0; i < FREE; i++) {
      const a = slopes[i];
      if (!a) return null;
      right[i] = -a.reduce((sum, value, n) => sum + value * ((here as Fitted).residuals[n] as number), 0);
      for (let j = 0; j < FREE; j++) {
        const b = slopes[j];
        if (!b) return null;
        normal[FREE * i + j] = a.reduce((sum, value, n) => sum + value * (b[n] as number), 0);
      }
    }
    for (let i = 0; i < FREE; i++) normal[(FREE + 1) * i] = (normal[(FREE + 1) * i] as number) * 1.02 + 1e-6;
    const lower = choleskyFactor(normal, FREE);
    if (!lower) return null;
    const step = [...choleskySolve(lower, FREE, right)].map((value) => Math.max(-0.5, Math.min(0.5, value)));
    const next = k.map((value, i) => value + (step[i] as number));
    next[2] = Math.max(1, Math.min(1.8 * startRadiusPx, next[2] as number));
    const there = fitAt(samples, next, LINEAR);
    if (!there || there.sum > here.sum) break;
    const settled = Math.hypot(...step) < 0.004;
    [k, here] = [next, there];
    if (settled) break;
  }
  const plain = fitAt(samples, k, 3);
  if (!plain) return null;
  return {
    placePx: [origin[0] + (k[0] as number), origin[1] + (k[1] as number)],
    radiusPx: k[2] as number,
    explained: 1 - here.sum / Math.max(1e-9, plain.sum),
    depth: Math.hypot(...here.inside),
    shadow: Math.hypot(here.inside[1] ?? 0, here.inside[2] ?? 0) - (here.inside[0] ?? 0),
  };
}

function samplesAbout(gray: Gray, [x0, y0]: Point, half: number, every = 1): readonly Sample[] | null {
  const [left, top] = [Math.floor(x0 - half), Math.floor(y0 - half)];
  const [right, low] = [Math.ceil(x0 + half), Math.ceil(y0 + half)];
  if (left < 0 || top < 0 || right >= gray.widthPx || low >= gray.heightPx) return null;
  const samples: Sample[] = [];
  for (let row = top; row <= low; row += every)
    for (let column = left; column <= right; column += every) {
      const [x, y] = [column + 0.5 - x0, row + 0.5 - y0];
      if (x * x + y * y <= half * half)
        samples.push({ x, y, level: gray.values[row * gray.widthPx + column] as number });
    }
  return samples;
}

/** Linear least squares of the first `unknowns` of m, p, q, a, b, c. */
function fitAt(samples: readonly Sample[], free: readonly number[], unknowns: number): Fitted | null {
  const [cx, cy, radius] = free as readonly [number, number, number];
  const n = samples.length;
  const rows = new Float64Array(n * unknowns);
  const normal = new Float64Array(unknowns * unknowns);
  const right = new Float64Array(unknowns);
  for (let i = 0; i < n; i++) {
    const { x, y, level } = samples[i] as Sample;
    const [dx, dy] = [x - cx, y - cy];
    const rho = Math.hypot(dx, dy);
    const within = blurredStep((radius - rho) / BLUR_PX);
    const round = within / Math.sqrt(rho * rho + BLUR_PX * BLUR_PX);
    const row = [1, dx, dy, within, round * dx, round * dy];
    for (let a = 0; a < unknowns; a++) {
      rows[i * unknowns + a] = row[a] as number;
      right[a] = (right[a] as number) + (row[a] as number) * level;
      for (let b = 0; b <= a; b++)
        normal[a * unknowns + b] =
          (normal[a * unknowns + b] as number) + (row[a] as number) * (row[b] as number);
    }
  }
  const lower = choleskyFactor(normal, unknowns);
  if (!lower) return null;
  const k = choleskySolve(lower, unknowns, right);
  const residuals = new Float64Array(n);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    let model = 0;
    for (let a = 0; a < unknowns; a++) model += (k[a] as number) * (rows[i * unknowns + a] as number);
    residuals[i] = model - (samples[i] as Sample).level;
    sum += (residuals[i] as number) ** 2;
  }
  return { sum, residuals, inside: [...k.slice(3)] };
}
