/** The rectangle to cut out, in frame pixels. */
import type { FramePoint } from './view-transform.ts';

export type CropRect = {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
};

export function rectBetween(a: FramePoint, b: FramePoint): CropRect {
  return {
    xPx: Math.min(a.xPx, b.xPx),
    yPx: Math.min(a.yPx, b.yPx),
    widthPx: Math.abs(a.xPx - b.xPx),
    heightPx: Math.abs(a.yPx - b.yPx),
  };
}
