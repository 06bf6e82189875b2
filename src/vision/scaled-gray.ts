/** A picture scaled down, each new pixel the mean of those it covers; a small one is left as it is. */
import type { Gray } from './gray.ts';
import type { Opencv } from './opencv.ts';
import type { Keep } from './with-opencv.ts';

/** scale: pixels of the new picture over pixels of the old. */
export type ScaledGray = { readonly gray: Gray; readonly scale: number };

export function scaledGray(cv: Opencv, keep: Keep, gray: Gray, mostPx: number): ScaledGray {
  const scale = Math.min(1, mostPx / Math.max(gray.widthPx, gray.heightPx));
  if (scale === 1) return { gray, scale };
  const from = keep(new cv.Mat(gray.heightPx, gray.widthPx, cv.CV_8UC1));
  from.data.set(gray.values);
  const into = keep(new cv.Mat());
  const [widthPx, heightPx] = [Math.round(scale * gray.widthPx), Math.round(scale * gray.heightPx)];
  cv.resize(from, into, { width: widthPx, height: heightPx }, 0, 0, cv.INTER_AREA);
  return { gray: { widthPx, heightPx, values: Uint8Array.from(into.data) }, scale };
}
