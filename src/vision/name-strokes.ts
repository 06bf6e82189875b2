/**
 * Readings for the strokes of a tape that were found without any (find-tape.ts), from one that a person named.
 *
 * Model    the named reading falls on a stroke of its own kind, a whole inch, a half or a quarter; from there readings count along the rod, away
 *          from the chamber's face or towards it; what then lies at the face must be about the tape's zero, or what lies there in another picture
 * Assumes  a tape whose zero lies at the face, or that lies beside the rod about as in another picture, give or take what lies before the face
 *          seen at an angle
 * Fails    null where the mark lies beside the strokes or between two of its kind, or something else would lie at the face: the tape may run
 *          the other way, or its strokes may not be what they were taken for
 */
import { MM_PER_INCH } from '../basics/units.ts';
import { wholeMm } from './assist-lattice.ts';
import type { EndMarks, FoundMark } from './assist-sight.ts';
import type { NamedGraduation } from './lattice-search.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { fitScale, type ProjectiveScale, scaleThrough, stepAt, valueAt } from './projective-scale.ts';

/** Of an inch: farther from a stroke of its kind, and the person named another one. */
const MOST_OFF = 0.2;
/** Of the reading at the face: a tape held an inch before the rod, seen 40 degrees off square. */
export const MOST_FROM_FACE_MM = 24;
/** Beside the row of strokes: no blade is wider. */
const MOST_BESIDE_MM = 30;

type Ends = Pick<EndMarks, 'facePx' | 'pinPx'>;

/** What a tape reads at the chamber's face, mm, and whether its readings grow from there to the pin, or fall. */
export type TapeLie = { readonly faceMm: number; readonly sign: 1 | -1 };

const FROM_FACE: TapeLie = { faceMm: 0, sign: 1 };

/** How the tape of these graduations lies, two of them or more; null of fewer. Of two or three it is taken to be seen square. */
export function tapeLie(graduations: readonly FoundMark[], ends: Ends): TapeLie | null {
  const row = rowThrough(graduations);
  return row && lieIn(row, ends);
}

function lieIn({ scale, seen }: Row, { facePx, pinPx }: Ends): TapeLie {
  const [faceMm, pinMm] = [valueAt(scale, seen(facePx)[0]), valueAt(scale, seen(pinPx)[0])];
  return { faceMm, sign: pinMm > faceMm ? 1 : -1 };
}

/** strokes: readings count along the rod, from a start of no meaning. lies: of the tape in other pictures; without them its zero is at the face. */
export function nameStrokes(
  strokes: readonly FoundMark[],
  named: NamedGraduation,
  ends: Ends,
  lies: readonly TapeLie[] = [],
): readonly FoundMark[] | null {
  const row = rowThrough(strokes);
  if (!row || wholeMm(named.readingMm) !== MM_PER_INCH) return null;
  const { scale } = row;
  const [s, t] = row.seen(named.placePx);
  const countMm = valueAt(scale, s);
  if (!isBeside(scale, countMm, t)) return null;
  const counted = lieIn(row, ends);
  for (const lie of lies.length > 0 ? lies : [FROM_FACE]) {
    const sign = lie.sign === counted.sign ? 1 : -1;
    const inches = (named.readingMm - sign * countMm) / MM_PER_INCH;
    const byInches = Math.round(inches);
    const offMm = sign * counted.faceMm + byInches * MM_PER_INCH - lie.faceMm;
    if (Math.abs(inches - byInches) <= MOST_OFF && Math.abs(offMm) <= MOST_FROM_FACE_MM)
      return countedAs({ sign, byInches }, strokes);
  }
  return null;
}

/** A reading is sign times what strokes without readings count, plus by: inches. */
export type Count = { readonly sign: 1 | -1; readonly byInches: number };

/** Those that the tape has, the lowest reading first: there are none before its zero. */
export function countedAs({ sign, byInches }: Count, strokes: readonly FoundMark[]) {
  return strokes
    .map((mark) => ({ ...mark, readingMm: sign * (mark.readingMm ?? 0) + byInches * MM_PER_INCH }))
    .filter(({ readingMm }) => readingMm > 0.01)
    .sort((a, b) => a.readingMm - b.readingMm);
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
  if (!from || !to || from === to) return null;
  const lengthPx = apart(from, to);
  const along: Point = [(to[0] - from[0]) / lengthPx, (to[1] - from[1]) / lengthPx];
  const seen = (place: Point): Point => [
    dot(minus(place, from), along),
    dot(minus(place, from), [-along[1], along[0]]),
  ];
  const square = scaleThrough(low, high, [0, lengthPx / 2, lengthPx]);
  const fit = fitScale(
    square,
    strokes.map(({ placePx, readingMm }) => ({ value: readingMm ?? 0, s: seen(placePx)[0], weight: 1 })),
  );
  return { scale: fit?.scale ?? square, seen };
}

export const isWholeInch = ({ readingMm }: FoundMark): boolean => {
  const inches = (readingMm ?? 0) / MM_PER_INCH;
  return Math.abs(inches - Math.round(inches)) < 1e-6;
};
