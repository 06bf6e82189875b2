/** What of a square about a place lies within a picture. */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

/** Its first pixel's corner lies at `cornerPx` of the whole picture. */
export type PictureCut = { readonly gray: Gray; readonly cornerPx: Point };

export function cutGray(whole: Gray, [x, y]: Point, reachPx: number): PictureCut {
  const [left, top] = [Math.max(0, Math.floor(x - reachPx)), Math.max(0, Math.floor(y - reachPx))];
  const widthPx = Math.max(0, Math.min(whole.widthPx, Math.ceil(x + reachPx)) - left);
  const heightPx = Math.max(0, Math.min(whole.heightPx, Math.ceil(y + reachPx)) - top);
  const values = new Uint8Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    const from = (top + row) * whole.widthPx + left;
    values.set(whole.values.subarray(from, from + widthPx), row * widthPx);
  }
  return { gray: { widthPx, heightPx, values }, cornerPx: [left, top] };
}
