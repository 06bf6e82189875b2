/**
 * A part of a picture without what changes slowly across it: light that falls off, gleams that move with the camera.
 *
 * Model    128 + 1.5 (level - mean of about it), the mean by two passes of a square's mean: about a Gaussian of standard deviation 0.82 half
 */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

/** Its first pixel's corner lies at `cornerPx` of the whole picture. */
export type PictureCut = { readonly gray: Gray; readonly cornerPx: Point };

const GAIN = 1.5;
const MIDDLE = 128;

/** What of the square about a place lies within the picture; null where none does. */
export function lessShading(whole: Gray, [x, y]: Point, reachPx: number, halfPx: number): PictureCut | null {
  const [left, top] = [Math.max(0, Math.floor(x - reachPx)), Math.max(0, Math.floor(y - reachPx))];
  const widthPx = Math.min(whole.widthPx, Math.ceil(x + reachPx)) - left;
  const heightPx = Math.min(whole.heightPx, Math.ceil(y + reachPx)) - top;
  if (widthPx < 3 || heightPx < 3) return null;
  const levels = new Float32Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    const from = (top + row) * whole.widthPx + left;
    levels.set(whole.values.subarray(from, from + widthPx), row * widthPx);
  }
  let mean = levels;
  for (let pass = 0; pass < 2; pass++) {
    mean = meanAlong(mean, widthPx, heightPx, { step: 1, line: widthPx }, halfPx);
    mean = meanAlong(mean, heightPx, widthPx, { step: widthPx, line: 1 }, halfPx);
  }
  const values = Uint8Array.from(levels, (level, i) =>
    Math.max(0, Math.min(255, Math.round(MIDDLE + GAIN * (level - (mean[i] as number))))),
  );
  return { gray: { widthPx, heightPx, values }, cornerPx: [left, top] };
}

/** Of each line: sums that run along it. */
function meanAlong(
  levels: Float32Array,
  length: number,
  lines: number,
  { step, line }: { readonly step: number; readonly line: number },
  halfPx: number,
): Float32Array<ArrayBuffer> {
  const half = Math.max(1, Math.round(halfPx));
  const out = new Float32Array(levels.length);
  const sums = new Float64Array(length + 1);
  for (let i = 0; i < lines; i++) {
    for (let j = 0; j < length; j++)
      sums[j + 1] = (sums[j] as number) + (levels[i * line + j * step] as number);
    for (let j = 0; j < length; j++) {
      const [from, to] = [Math.max(0, j - half), Math.min(length, j + half + 1)];
      out[i * line + j * step] = ((sums[to] as number) - (sums[from] as number)) / (to - from);
    }
  }
  return out;
}
