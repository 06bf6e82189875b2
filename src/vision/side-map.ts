/**
 * How brightness changes about push rod and arm, on a grid of millimetres, as if seen square to the chamber's axis.
 *
 * Model    u: mm along the axis, from the middle of the band's rim towards the rod; v: mm across it. The tape tells how large a millimetre is
 *          along the axis, shortened as it is seen; across it is larger by 1 / cos e, sin e the ratio of the axes of the rim's ellipse. So a
 *          circle in the plane of motion is about a circle here
 *          slopes over five cells, smoothed across them by 1 4 6 4 1; each over its own size and FAINT together: a way rather than a strength.
 *          None beyond the picture
 * Assumes  rod and arm about as far from the camera as the tape, their plane turned but little about the axis
 */
import type { Gray } from './gray.ts';
import { isInPicture, levelAt } from './level-at.ts';
import { apart, dot, minus, type Point } from './point.ts';
import type { SoughtBand } from './seek-band.ts';

/** alongs, acrosses: of a slope, row by row of the grid, each below 1. tilt: tan e. */
export type SideMap = {
  readonly alongs: Float32Array;
  readonly acrosses: Float32Array;
  readonly tilt: number;
  /** Across the axis, where nothing is shortened. */
  readonly pxPerMm: number;
  readonly placePx: (place: Point) => Point;
};

export const CELL_MM = 0.5;
const FROM: Point = [20, -250];
export const COLUMNS = 800;
const ROWS = 1000;
/** Levels of 255 a cell. */
const FAINT = 5;

export const cellAt = ([u, v]: Point): number =>
  Math.round((v - FROM[1]) / CELL_MM) * COLUMNS + Math.round((u - FROM[0]) / CELL_MM);

export function sideMap(gray: Gray, { axisPx: [middle, end], pxPerMm, ratio }: SoughtBand): SideMap {
  const length = apart(middle, end);
  const [ax, ay]: Point = [(end[0] - middle[0]) / length, (end[1] - middle[1]) / length];
  const acrossPx = pxPerMm / Math.sqrt(1 - ratio * ratio);
  const placePx = ([u, v]: Point): Point => [
    middle[0] + u * pxPerMm * ax - v * acrossPx * ay,
    middle[1] + u * pxPerMm * ay + v * acrossPx * ax,
  ];
  const levels = new Float32Array(COLUMNS * ROWS).fill(Number.NaN);
  for (let row = 0, at = 0; row < ROWS; row++)
    for (let column = 0; column < COLUMNS; column++, at++) {
      const [x, y] = placePx([FROM[0] + (column + 0.5) * CELL_MM, FROM[1] + (row + 0.5) * CELL_MM]);
      if (isInPicture(gray, x, y, 1)) levels[at] = levelAt(gray, x, y);
    }
  return { ...slopesOf(levels), tilt: ratio / Math.sqrt(1 - ratio * ratio), pxPerMm: acrossPx, placePx };
}

function slopesOf(levels: Float32Array): Pick<SideMap, 'alongs' | 'acrosses'> {
  const alongs = new Float32Array(levels.length);
  const acrosses = new Float32Array(levels.length);
  const level = (at: number) => levels[at] as number;
  // Rows first: of each cell its slope along, and its mean along.
  const rise = new Float32Array(levels.length);
  const mean = new Float32Array(levels.length);
  for (let at = 2; at < levels.length - 2; at++) {
    const [a, b, c, d, e] = [level(at - 2), level(at - 1), level(at), level(at + 1), level(at + 2)];
    rise[at] = (e - a + 2 * (d - b)) / 8;
    mean[at] = (a + e + 4 * (b + d) + 6 * c) / 16;
  }
  const [one, two] = [COLUMNS, 2 * COLUMNS];
  for (let at = two; at < levels.length - two; at++) {
    const r = (by: number) => rise[at + by] as number;
    const m = (by: number) => mean[at + by] as number;
    const du = (r(-two) + r(two) + 4 * (r(-one) + r(one)) + 6 * r(0)) / 16;
    const dv = (m(two) - m(-two) + 2 * (m(one) - m(-one))) / 8;
    const size = Math.sqrt(du * du + dv * dv + FAINT * FAINT);
    if (Number.isNaN(size)) continue;
    alongs[at] = du / size;
    acrosses[at] = dv / size;
  }
  return { alongs, acrosses };
}

/** How far slopes go square to a line, regardless of their sign in each piece of it: 0 to 1. */
export function edgeAlong({ alongs, acrosses }: SideMap, from: Point, to: Point): number {
  const along = minus(to, from);
  const length = Math.sqrt(dot(along, along));
  const [nu, nv] = [-along[1] / length, along[0] / length];
  let total = 0;
  for (let piece = 0; piece < PIECES; piece++) {
    let sum = 0;
    for (let i = 0; i < PER_PIECE; i++) {
      const part = (piece * PER_PIECE + i + 0.5) / (PIECES * PER_PIECE);
      const at = cellAt([from[0] + part * along[0], from[1] + part * along[1]]);
      sum += nu * (alongs[at] ?? 0) + nv * (acrosses[at] ?? 0);
    }
    total += Math.abs(sum) / PER_PIECE;
  }
  return total / PIECES;
}

const PIECES = 5;
const PER_PIECE = 6;
