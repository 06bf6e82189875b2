/**
 * The part of a picture that the report shows: the brake, large.
 *
 * Model    the box round all points, with room for names, widened to the report's format where the picture reaches so far.
 * Fails    without points: the whole picture.
 */
import type { CropRect } from '../viewer/crop-rect.ts';
import type { FramePoint, FrameSize } from '../viewer/view-transform.ts';

const PICTURE_FORMAT = 4 / 3;
/** Share of the box left free on each side. */
const ROOM = 0.14;
/** Closer there is nothing more to see. */
const LEAST_PX = 300;

export function cropAround(points: readonly FramePoint[], picture: FrameSize): CropRect {
  if (points.length === 0) return { xPx: 0, yPx: 0, ...picture };
  const across = span(points.map(({ xPx }) => xPx));
  const down = span(points.map(({ yPx }) => yPx));
  const widthPx = Math.min(
    picture.widthPx,
    Math.max(LEAST_PX, across.length, (down.length * PICTURE_FORMAT) | 0),
  );
  const heightPx = Math.min(picture.heightPx, Math.max(down.length, Math.round(widthPx / PICTURE_FORMAT)));
  return {
    xPx: startWithin(across.middle, widthPx, picture.widthPx),
    yPx: startWithin(down.middle, heightPx, picture.heightPx),
    widthPx: Math.round(widthPx),
    heightPx: Math.round(heightPx),
  };
}

function span(values: readonly number[]): { readonly middle: number; readonly length: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return { middle: (low + high) / 2, length: Math.ceil((high - low) * (1 + 2 * ROOM)) };
}

function startWithin(middle: number, length: number, whole: number): number {
  return Math.round(Math.min(Math.max(middle - length / 2, 0), whole - length));
}
