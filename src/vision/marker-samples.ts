/**
 * The pixels that a marker is fitted to, as light.
 *
 * Model    from the marker's middle to 0.6 cells beyond its border, every pixel or every second, third ... of large markers
 * Assumes  the camera coded light as sRGB does; phones come near it.
 * Fails    null where part of that is outside the picture
 */
import type { Gray } from './gray.ts';
import { type Homography, inverseOf, mapped } from './homography.ts';
import { LINEAR_LIGHT } from './linear-light.ts';
import { CELLS } from './marker-model.ts';
import type { Point, Quad } from './point.ts';

/** x, y: pixels from the marker's middle over half its side. */
export type Sample = { readonly x: number; readonly y: number; readonly light: number };
export type MarkerFrame = { readonly middle: Point; readonly half: number };

export const CELL_CORNERS: Quad = [
  [0, 0],
  [CELLS, 0],
  [CELLS, CELLS],
  [0, CELLS],
];

const BEYOND_CELLS = 0.6;
/** More pixels than these change little: what is left then is not noise. */
const ENOUGH_PIXELS = 3000;

export function samplesOf(
  gray: Gray,
  cellsFromLocal: Homography,
  { middle, half }: MarkerFrame,
): readonly Sample[] | null {
  const reach = CELL_CORNERS.map(
    ([u, v]): Point => [
      u === 0 ? -BEYOND_CELLS : u + BEYOND_CELLS,
      v === 0 ? -BEYOND_CELLS : v + BEYOND_CELLS,
    ],
  ).map((corner) => mapped(inverseOf(cellsFromLocal), corner));
  const span = (axis: 0 | 1) => {
    const values = reach.map((point) => middle[axis] + half * point[axis]);
    return [Math.floor(Math.min(...values)), Math.ceil(Math.max(...values))] as const;
  };
  const [left, right] = span(0);
  const [top, bottom] = span(1);
  if (left < 0 || top < 0 || right >= gray.widthPx || bottom >= gray.heightPx) return null;
  const every = Math.max(1, Math.round(Math.sqrt(((right - left) * (bottom - top)) / ENOUGH_PIXELS)));
  const samples: Sample[] = [];
  for (let row = top; row <= bottom; row += every)
    for (let column = left; column <= right; column += every) {
      const x = (column + 0.5 - middle[0]) / half;
      const y = (row + 0.5 - middle[1]) / half;
      const cell = mapped(cellsFromLocal, [x, y]);
      if (cell.every((c) => c >= -BEYOND_CELLS && c <= CELLS + BEYOND_CELLS))
        samples.push({
          x,
          y,
          light: LINEAR_LIGHT[gray.values[row * gray.widthPx + column] as number] as number,
        });
    }
  return samples;
}
