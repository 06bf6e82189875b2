/**
 * Where a place of the seed picture roughly lies in another one: coarse samples, all shifts within a reach tried.
 *
 * Model    normalised correlation over a square of samples; the peak between shifts by a parabola along and across
 * Assumes  neither turned by more than some ten degrees nor much nearer
 * Fails    null where the reach leaves the picture
 */
import { type Cutout, centreOf, cutInto, newCutout } from './follow-cutout.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

/** Of the square, without the middle. */
export const LOOK_HALF = 4;
const SIDE = 2 * LOOK_HALF + 1;

export type Look = {
  /** Less their mean, of length one. */
  readonly levels: Float32Array;
  readonly stepPx: number;
  /** Of the place, from the middle of the samples. */
  readonly offPx: Point;
};

export type Alike = {
  readonly place: Point;
  readonly likeness: number;
  /** The best of all shifts further off than the samples reach. */
  readonly rival: number;
};

export function lookOf(gray: Gray, place: Point, stepPx: number): Look | null {
  const cutout = newCutout(SIDE, SIDE, stepPx);
  if (!cutInto(cutout, gray, place)) return null;
  const [x, y] = centreOf(cutout);
  const mean = cutout.values.reduce((sum, level) => sum + level, 0) / cutout.values.length;
  const levels = cutout.values.map((level) => level - mean);
  const length = Math.hypot(...levels);
  if (!(length > SIDE)) return null;
  return { levels: levels.map((level) => level / length), stepPx, offPx: [place[0] - x, place[1] - y] };
}

/** scores: of all shifts, filled anew for each look. */
export type LookRoom = { readonly cutout: Cutout; readonly scores: Float32Array };

/** Room for all shifts within a rectangle about a place. */
export function roomForLook({ stepPx }: Look, reachX: number, reachY: number): LookRoom {
  return {
    cutout: newCutout(2 * reachX + SIDE, 2 * reachY + SIDE, stepPx),
    scores: new Float32Array((2 * reachX + 1) * (2 * reachY + 1)),
  };
}

/** allowed: of a place; all shifts without it. */
export function mostAlike(
  look: Look,
  gray: Gray,
  about: Point,
  { cutout: room, scores }: LookRoom,
  allowed?: (place: Point) => boolean,
): Alike | null {
  if (!cutInto(room, gray, [about[0] - look.offPx[0], about[1] - look.offPx[1]])) return null;
  const [columns, rows] = [room.columns - SIDE + 1, room.rows - SIDE + 1];
  const placeOf = (column: number, row: number): Point => [
    room.leftPx + (column + LOOK_HALF + 0.5) * look.stepPx + look.offPx[0],
    room.topPx + (row + LOOK_HALF + 0.5) * look.stepPx + look.offPx[1],
  ];
  let best = -1;
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      const out = allowed !== undefined && !allowed(placeOf(column, row));
      scores[at] = out ? -1 : scoreAt(look, room, column, row);
      if (best < 0 || (scores[at] as number) > (scores[best] as number)) best = at;
    }
  const [column, row] = [best % columns, Math.floor(best / columns)];
  const score = (c: number, r: number) =>
    c < 0 || r < 0 || c >= columns || r >= rows ? -1 : (scores[r * columns + c] as number);
  const peak = score(column, row);
  let rival = -1;
  for (let r = 0, at = 0; r < rows; r++)
    for (let c = 0; c < columns; c++, at++) {
      const apart = Math.max(Math.abs(c - column), Math.abs(r - row));
      if (apart > LOOK_HALF && (scores[at] as number) > rival) rival = scores[at] as number;
    }
  return {
    place: placeOf(
      column + between(score(column - 1, row), peak, score(column + 1, row)),
      row + between(score(column, row - 1), peak, score(column, row + 1)),
    ),
    likeness: peak,
    rival,
  };
}

function scoreAt({ levels }: Look, { values, columns }: Cutout, column: number, row: number): number {
  let [sum, square, alike] = [0, 0, 0];
  for (let j = 0, k = 0; j < SIDE; j++) {
    let at = (row + j) * columns + column;
    for (let i = 0; i < SIDE; i++, k++, at++) {
      const value = values[at] as number;
      sum += value;
      square += value * value;
      alike += value * (levels[k] as number);
    }
  }
  const variance = square - (sum * sum) / levels.length;
  return variance > levels.length ? alike / Math.sqrt(variance) : 0;
}

/** -1/2 to 1/2: where the parabola through three neighbours has its top. */
function between(before: number, peak: number, after: number): number {
  const bend = before - 2 * peak + after;
  return bend < 0 && before > -1 && after > -1
    ? Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend))
    : 0;
}
