/**
 * Readings for the strokes of a tape that were found without any (find-tape.ts), from one that a person named.
 *
 * Model    the named reading falls on a stroke of its own kind, a whole inch, a half or a quarter; from there readings count along the rod, away
 *          from the chamber's face; where the tape would begin then must lie near the face
 * Assumes  a tape whose zero lies at the chamber face, give or take what lies before it seen at an angle
 * Fails    null where the mark lies beside the strokes or between two of its kind, or the tape would begin elsewhere: it may run the other
 *          way, or its strokes may not be what they were taken for
 */
import { MM_PER_INCH } from '../basics/units.ts';
import { wholeMm } from './assist-lattice.ts';
import type { FoundMark } from './assist-sight.ts';
import type { NamedGraduation } from './lattice-search.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { fitScale, type ProjectiveScale, scaleThrough, stepAt, valueAt } from './projective-scale.ts';

/** Of an inch: farther from a stroke of its kind, and the person named another one. */
const MOST_OFF = 0.2;
/** Of where the tape begins, from the face along the rod: a tape held an inch before the rod, seen 40 degrees off square. */
export const MOST_FROM_FACE_MM = 24;
/** Beside the row of strokes: no blade is wider. */
const MOST_BESIDE_MM = 30;

/** strokes: readings count along the rod from a start of no meaning. */
export function nameStrokes(
  strokes: readonly FoundMark[],
  named: NamedGraduation,
  facePx: Point,
): readonly FoundMark[] | null {
  const row = rowThrough(strokes);
  if (!row || wholeMm(named.readingMm) !== MM_PER_INCH) return null;
  const { scale } = row;
  const [s, t] = row.seen(named.placePx);
  const countMm = valueAt(scale, s);
  const inches = (named.readingMm - countMm) / MM_PER_INCH;
  const byMm = Math.round(inches) * MM_PER_INCH;
  const beginMm = valueAt(scale, row.seen(facePx)[0]) + byMm;
  const fits =
    Math.abs(inches - Math.round(inches)) <= MOST_OFF &&
    isBeside(scale, countMm, t) &&
    Math.abs(beginMm) <= MOST_FROM_FACE_MM;
  if (!fits) return null;
  return strokes.flatMap((mark) => {
    const readingMm = (mark.readingMm ?? 0) + byMm;
    return readingMm > 0 ? [{ ...mark, readingMm }] : [];
  });
}

const isBeside = (scale: ProjectiveScale, readingMm: number, t: number) =>
  Math.abs(t) <= MOST_BESIDE_MM * Math.abs(stepAt(scale, readingMm));

/** What a place beside strokes with readings reads by them, mm; null farther off. */
export function readingAt(strokes: readonly FoundMark[], placePx: Point): number | null {
  const row = rowThrough(strokes);
  if (!row) return null;
  const [s, t] = row.seen(placePx);
  const readingMm = valueAt(row.scale, s);
  return isBeside(row.scale, readingMm, t) ? readingMm : null;
}

/** Whether a stroke of what was named lies there. */
export const isReadSo = (readingMm: number, namedMm: number): boolean =>
  Math.abs(readingMm - namedMm) <= MOST_OFF * MM_PER_INCH;

/** The quarter of an inch nearest to it, mm. */
export const quarterAt = (readingMm: number): number =>
  (Math.round((4 * readingMm) / MM_PER_INCH) * MM_PER_INCH) / 4;

/** seen: along the row and beside it, px. */
type Row = { readonly scale: ProjectiveScale; readonly seen: (place: Point) => Point };

function rowThrough(strokes: readonly FoundMark[]): Row | null {
  const readings = strokes.map(({ readingMm }) => readingMm ?? 0);
  const [low, high] = [Math.min(...readings), Math.max(...readings)];
  const from = strokes[readings.indexOf(low)]?.placePx;
  const to = strokes[readings.indexOf(high)]?.placePx;
  if (!from || !to) return null;
  const lengthPx = apart(from, to);
  const along: Point = [(to[0] - from[0]) / lengthPx, (to[1] - from[1]) / lengthPx];
  const seen = (place: Point): Point => [
    dot(minus(place, from), along),
    dot(minus(place, from), [-along[1], along[0]]),
  ];
  const fit = fitScale(
    scaleThrough(low, high, [0, lengthPx / 2, lengthPx]),
    strokes.map(({ placePx, readingMm }) => ({ value: readingMm ?? 0, s: seen(placePx)[0], weight: 1 })),
  );
  return fit && { scale: fit.scale, seen };
}

export const isWholeInch = ({ readingMm }: FoundMark): boolean => {
  const inches = (readingMm ?? 0) / MM_PER_INCH;
  return Math.abs(inches - Math.round(inches)) < 1e-6;
};
