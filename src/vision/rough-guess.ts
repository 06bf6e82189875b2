/**
 * Where things are in a picture in which nothing is marked, roughly: the tape, with it the clamp band and the chamber's axis, and with these
 * the ends of pin and camshaft.
 *
 * Model    a tape anywhere (seek-tape.ts), behind its ends a chamber (seek-band.ts); both are likely where they confirm each other: a band about
 *          an axis along the tape, of a size that its scale allows. A tape alone is told as less likely. About that axis, of sizes that the scale allows, the ends (seek-ends.ts)
 * Assumes  what those do. Large pictures are looked at smaller
 * Fails    nothing found: all null
 */
import type { FoundMark } from './assist-sight.ts';
import type { Gray } from './gray.ts';
import { isWholeInch } from './name-strokes.ts';
import type { Point } from './point.ts';
import type { RoughGuess } from './rough-sight.ts';
import { seekBand } from './seek-band.ts';
import { type SoughtEnd, seekEnds } from './seek-ends.ts';
import { seekTape } from './seek-tape.ts';
import { shrunk } from './shrunk.ts';

const MOST_PX = 2200;

export function roughGuess(gray: Gray): RoughGuess {
  const { gray: looked, by } = shrunk(gray, MOST_PX);
  const strokes = seekTape(looked);
  if (!strokes) return { tape: null, band: null, axis: null, pin: null, camshaft: null };
  const band = seekBand(looked, strokes);
  const ends = band ? seekEnds(looked, band) : { pin: null, camshaft: null };
  const likely = band !== null;
  const placed = ([x, y]: Point): Point => [by * x, by * y];
  const places = (marks: readonly FoundMark[]) => marks.map(({ placePx }) => placed(placePx));
  const end = (sought: SoughtEnd | null) =>
    sought && { ...sought, placePx: placed(sought.placePx), radiusPx: by * sought.radiusPx };
  return {
    tape: { likely, placesPx: places(strokes.filter(isWholeInch)) },
    band: band && { likely, placesPx: places(band.rim) },
    axis: band && { likely, placesPx: band.axisPx.map(placed) },
    pin: end(ends.pin),
    camshaft: end(ends.camshaft),
  };
}
