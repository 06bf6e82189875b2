/**
 * The part of a picture in which the over-stroke mark is looked for: about the push rod where it leaves the chamber face.
 *
 * Model    along the rod from BEHIND to OUT, to both sides SIDES half widths: the box about that, square to the picture
 */
import type { Point } from './point.ts';
import type { Rect } from './rect.ts';

/** The rod in pixels of the upright picture: its middle line at the face, its way out (unit vector), its half width. */
export type RodLine = {
  readonly facePx: Point;
  readonly way: Point;
  readonly pxPerMm: number;
  readonly halfWidthPx: number;
};

/** Whole pixels of the upright picture; rgba row by row, 0 to 255. */
export type PaintRegion = Rect & { readonly rgba: Uint8ClampedArray };

/** A mark of the face is some pixels off, and the face's hole lets some of the rod be seen behind it. */
export const BEHIND_MM = 8;
/** Farther out than any over-stroke mark reaches there is the rod's own metal to compare with. */
export const OUT_MM = 58;
/** What lies beside the rod tells what crosses it, and what the light is like. */
export const SIDES = 2.6;

/** What is shown of it: where a mark can be, with a little about it. */
const SHOWN_MM = 36;
const SHOWN_SIDES = 2.2;

type Size = { readonly widthPx: number; readonly heightPx: number };

export const paintBox = (rod: RodLine, picture: Size): Rect =>
  boxAlong(rod, OUT_MM, SIDES, { xPx: 0, yPx: 0, ...picture });

export const cropBox = (rod: RodLine, region: Rect): Rect => boxAlong(rod, SHOWN_MM, SHOWN_SIDES, region);

function boxAlong(rod: RodLine, outMm: number, sides: number, within: Rect): Rect {
  const { facePx, way, pxPerMm, halfWidthPx } = rod;
  const aside = sides * halfWidthPx;
  const corners = [-BEHIND_MM, outMm].flatMap((alongMm) =>
    [-aside, aside].map(
      (offPx): Point => [
        facePx[0] + alongMm * pxPerMm * way[0] - offPx * way[1],
        facePx[1] + alongMm * pxPerMm * way[1] + offPx * way[0],
      ],
    ),
  );
  const side = (axis: 0 | 1, lowPx: number, sizePx: number) => {
    const values = corners.map((corner) => corner[axis]);
    const clipped = (value: number) => Math.min(lowPx + sizePx, Math.max(lowPx, value));
    return [clipped(Math.floor(Math.min(...values))), clipped(Math.ceil(Math.max(...values)))] as const;
  };
  const [left, right] = side(0, within.xPx, within.widthPx);
  const [top, bottom] = side(1, within.yPx, within.heightPx);
  return { xPx: left, yPx: top, widthPx: right - left, heightPx: bottom - top };
}
