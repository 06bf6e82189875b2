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
  for (let row = 0, at = 0; row < rows; row++)
    for (let column = 0; column < columns; column++, at++) {
      const out = allowed !== undefined && !allowed(placeAt(look, room, column, row));
      scores[at] = out ? -1 : scoreAt(look, room, column, row);
    }
  const best = bestOf(scores);
  const [column, row] = [best % columns, Math.floor(best / columns)];
  const peak = scores[best] as number;
  const isInside = (at: number, count: number) => at > 0 && at < count - 1;
  const along = isInside(column, columns) ? between(scores, best, 1) : 0;
  const across = isInside(row, rows) ? between(scores, best, columns) : 0;
  return {
    place: placeAt(look, room, column + along, row + across),
    likeness: peak,
    rival: bestAwayFrom(scores, columns, column, row),
  };
}

function placeAt({ stepPx, offPx }: Look, { leftPx, topPx }: Cutout, column: number, row: number): Point {
  return [
    leftPx + (column + LOOK_HALF + 0.5) * stepPx + offPx[0],
    topPx + (row + LOOK_HALF + 0.5) * stepPx + offPx[1],
  ];
}

function bestOf(scores: Float32Array): number {
  let best = 0;
  for (let at = 1; at < scores.length; at++) if ((scores[at] as number) > (scores[best] as number)) best = at;
  return best;
}

/** Farther off than the samples reach; -1 where nothing is. */
function bestAwayFrom(scores: Float32Array, columns: number, column: number, row: number): number {
  let best = -1;
  for (let at = 0, r = 0; at < scores.length; r++)
    for (let c = 0; c < columns; c++, at++) {
      const isNear =
        c - column <= LOOK_HALF && column - c <= LOOK_HALF && r - row <= LOOK_HALF && row - r <= LOOK_HALF;
      if (!isNear && (scores[at] as number) > best) best = scores[at] as number;
    }
  return best;
}

function scoreAt({ levels }: Look, { values, columns }: Cutout, column: number, row: number): number {
  let sum = 0;
  let square = 0;
  let alike = 0;
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
function between(scores: Float32Array, at: number, step: number): number {
  const [before, peak, after] = [scores[at - step], scores[at], scores[at + step]] as [
    number,
    number,
    number,
  ];
  const bend = before - 2 * peak + after;
  return bend < 0 && before > -1 && after > -1
    ? Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend))
    : 0;
}
