/**
 * What changes across the push rod, piece by piece along it.
 *
 * Model    s along the frame, t across, pixels; a piece: the brightness on lines across, averaged along the piece; a step there: by how many
 *          of 255 levels it changes over two pixels, where that is more than on either side; seen: 0 at the least that is told from the usual
 *          change about the rod, 1 from MOST_BY times that on: a stronger one says no more, as a shadow's edge is stronger than the rod's
 */
import { middleOf } from '../basics/middle.ts';
import { type Frame, levelIn } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';

/** seen: of whole pixels t = -roomPx to roomPx, 0 to 1, the best of each and the two beside it. */
export type RodPiece = { readonly s: number; readonly levels: Float64Array; readonly seen: Float64Array };
export type RodStrip = {
  readonly frame: Frame;
  readonly roomPx: number;
  readonly pieces: readonly RodPiece[];
};

const LEAST_RISE = 2.5;
/** Of the median change. */
const USUAL = 1.2;
const MOST_BY = 3;
const MOST_LINES = 12;

export type StripPlace = {
  readonly fromPx: number;
  readonly toPx: number;
  readonly count: number;
  readonly roomPx: number;
};

export function rodStrip(gray: Gray, frame: Frame, { fromPx, toPx, count, roomPx }: StripPlace): RodStrip {
  const piecePx = (toPx - fromPx) / count;
  const about = Array.from({ length: count }, (_, i) => {
    const s = fromPx + (i + 0.5) * piecePx;
    return { s, levels: levelsAbout(gray, frame, s, piecePx, roomPx) };
  });
  const usual = middleOf(about.flatMap(({ levels }) => risesIn(levels))) ?? 0;
  const least = Math.max(LEAST_RISE, USUAL * usual);
  const pieces = about.map((each): RodPiece => ({ ...each, seen: seenIn(each.levels, least) }));
  return { frame, roomPx, pieces };
}

function levelsAbout(gray: Gray, frame: Frame, s: number, piecePx: number, roomPx: number): Float64Array {
  const lines = Math.min(MOST_LINES, Math.max(2, Math.round(piecePx)));
  const levels = new Float64Array(2 * roomPx + 1);
  for (let line = 0; line < lines; line++) {
    const at = s + ((line + 0.5) / lines - 0.5) * piecePx;
    for (let row = 0; row < levels.length; row++)
      levels[row] = (levels[row] as number) + levelIn(gray, frame, at, row - roomPx) / lines;
  }
  return levels;
}

/** By how many levels the brightness changes over the two pixels about a row. */
export const riseAt = (levels: Float64Array, i: number): number =>
  Math.abs((levels[i + 1] as number) - (levels[i - 1] as number));

const risesIn = (levels: Float64Array): number[] =>
  Array.from({ length: levels.length - 2 }, (_, i) => riseAt(levels, i + 1));

function seenIn(levels: Float64Array, least: number): Float64Array {
  const rise = (i: number) => riseAt(levels, i);
  const steps = new Float64Array(levels.length);
  for (let i = 2; i < levels.length - 2; i++) {
    const here = rise(i);
    if (here < rise(i - 1) || here <= rise(i + 1)) continue;
    steps[i] = Math.min(1, Math.max(0, (here - least) / ((MOST_BY - 1) * least)));
  }
  const seen = new Float64Array(levels.length);
  for (let i = 1; i < levels.length - 1; i++)
    seen[i] = Math.max(steps[i - 1] as number, steps[i] as number, steps[i + 1] as number);
  return seen;
}
