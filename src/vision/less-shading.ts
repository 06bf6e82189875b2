/**
 * A part of a picture without what changes slowly across it: light that falls off, gleams that move with the camera.
 *
 * Model    128 + 1.5 (level - mean of about it), the mean by two passes of a square's mean: about a Gaussian of standard deviation 0.82 half
 */
import type { Gray } from './gray.ts';
import { cutGray, type PictureCut } from './gray-cut.ts';
import type { Point } from './point.ts';

const GAIN = 1.5;
const MIDDLE = 128;

/** What of the square about a place lies within the picture; null where none does. */
export function lessShading(whole: Gray, place: Point, reachPx: number, halfPx: number): PictureCut | null {
  const { gray, cornerPx } = cutGray(whole, place, reachPx);
  const { widthPx, heightPx } = gray;
  if (widthPx < 3 || heightPx < 3) return null;
  const levels = Float32Array.from(gray.values);
  let mean = levels;
  for (let pass = 0; pass < 2; pass++) {
    mean = meanAlong(mean, widthPx, heightPx, { step: 1, line: widthPx }, halfPx);
    mean = meanAlong(mean, heightPx, widthPx, { step: widthPx, line: 1 }, halfPx);
  }
  const values = Uint8Array.from(levels, (level, i) =>
    Math.max(0, Math.min(255, Math.round(MIDDLE + GAIN * (level - (mean[i] as number))))),
  );
  return { gray: { widthPx, heightPx, values }, cornerPx };
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
