/**
 * The readings of a tape's whole inches by the numerals printed beside them.
 *
 * Model    numerals stand in the same place beside each whole inch, of one height, all turned the same way, and count up by one: so the unknown is
 *          one count, along the lattice or against it. Layouts (turn, height, place, distance of two digits, which of two stands where one
 *          stands) in turn; of each inch the odds of the digits that a count asks for, and of none beside a single one, each no worse than
 *          some odds of dirt; summed over all inches. A count is worth what its best layout gives, counted on or, where the end of a foot is in
 *          sight, from one again after it
 * Assumes  whole inches up to 39, printed in digits; dirt spoils one numeral and not its neighbour
 * Fails    null where the best count does not beat every other clearly, or its numerals are hardly there
 */
import { MM_PER_INCH } from '../basics/units.ts';
import type { MeasuredLattice } from './assist-lattice.ts';
import type { FoundMark } from './assist-sight.ts';
import { bladeStrip } from './blade-strip.ts';
import { type DigitField, digitFields, likelyPlaces, oddsAt } from './digit-fields.ts';
import { NONE } from './digit-odds.ts';
import { slopeSums } from './digit-window.ts';
import type { Gray } from './gray.ts';
import { type Count, MOST_FROM_FACE_MM } from './name-strokes.ts';

/** margin: over the next best count; each: of a whole inch, on the mean; both in logarithms of odds. */
export type NumeralsRead = Count & { readonly margin: number; readonly each: number };

const HEIGHTS_MM = [3.9, 4.7, 5.7, 6.9, 8.3, 10];
const MOST_READING = 39;
/** Strokes that are taken for those of whole inches before the tape begins. */
const MOST_BEFORE = 2;
/** In steps. */
const PITCHES = [3, 4, 5, 6];
/** One numeral in so many is dirt, or not as it should be. */
const SPOILT = 0.08;
/** A tape that begins elsewhere than at the face is so much less usual. Common practice, no source. */
const UNUSUAL = 2.5;
/** So is one that counts from one again after a foot. Common practice, no source. */
const AGAIN = 2;
const FOOT = 12;
/** Logarithms of odds. Chosen on seeds that the tables of docs/assists.md do not have. */
const LEAST_MARGIN = 5;
const LEAST_EACH = 1.5;

/** Null where they cannot be read surely. faceMm: what the lattice counts at the chamber's face. */
export function readNumerals(gray: Gray, lattice: MeasuredLattice, faceMm: number): NumeralsRead | null {
  const wholesMm = wholesBetween(lattice.marks);
  const [best, next] = countsOf(gray, lattice, wholesMm, faceMm);
  if (!best || !next) return null;
  const [margin, each] = [best.sum - next.sum, best.sum / wholesMm.length];
  if (margin < LEAST_MARGIN || each < LEAST_EACH) return null;
  return { sign: best.sign, byInches: best.byInches, margin, each };
}

/** All of them from the first stroke to the last, seen or not. */
function wholesBetween(marks: readonly FoundMark[]): readonly number[] {
  const inches = marks.map(({ readingMm }) => (readingMm ?? 0) / MM_PER_INCH);
  const [first, last] = [Math.ceil(Math.min(...inches) - 1e-6), Math.floor(Math.max(...inches) + 1e-6)];
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * MM_PER_INCH);
}

type Weighed = Count & { readonly sum: number };

/** The best first. */
function countsOf(
  gray: Gray,
  lattice: MeasuredLattice,
  wholesMm: readonly number[],
  faceMm: number,
): readonly Weighed[] {
  const [first, last] = [Math.min(...wholesMm), Math.max(...wholesMm)];
  const strip = bladeStrip(gray, lattice, [first - MM_PER_INCH * 0.75, last + MM_PER_INCH * 0.75]);
  const sums = slopeSums(strip);
  const best = new Map<string, Weighed>();
  const inches = wholesMm.map((mm) => Math.round(mm / MM_PER_INCH));
  for (const heightMm of HEIGHTS_MM)
    for (const isUpright of [true, false])
      for (const field of digitFields(strip, sums, wholesMm, heightMm, isUpright))
        for (const layout of layoutsOn(field)) weigh(oddsOf(field, layout), inches, best);
  const usual = ({ sign, byInches }: Count) =>
    Math.abs(sign * faceMm + byInches * MM_PER_INCH) <= MOST_FROM_FACE_MM ? 0 : -UNUSUAL;
  return [...best.values()]
    .map((count) => ({ ...count, sum: count.sum + usual(count) }))
    .sort((a, b) => b.sum - a.sum);
}

/** One digit's place, steps from one to the other of two, and where in these steps the first of two lies from where one stands. */
type Layout = { readonly i: number; readonly j: number; readonly pitch: number; readonly first: number };

function* layoutsOn(field: DigitField): Generator<Layout> {
  for (const { i, j } of likelyPlaces(field))
    for (const pitch of PITCHES)
      for (const first of [-pitch, -Math.round(pitch / 2), 0]) yield { i, j, pitch, first };
}

/** For each whole inch and each reading. */
function oddsOf(field: DigitField, { i, j, pitch, first }: Layout): readonly Float64Array[] {
  const [di, dj] = (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[field.turn];
  return Array.from({ length: field.inches }, (_, inch) => {
    const at = (steps: number, kind: number) => oddsAt(field, inch, i + steps * di, j + steps * dj, kind);
    const alone = at(-pitch, NONE) + at(pitch, NONE);
    return Float64Array.from({ length: MOST_READING + 1 }, (_, reading) => {
      // There nothing is printed, or what lies beyond the tape's beginning is seen.
      if (reading === 0) return 0;
      const odds =
        reading < 10
          ? at(0, reading) + alone
          : at(first, Math.floor(reading / 10)) + at(first + pitch, reading % 10);
      return Math.log(SPOILT + (1 - SPOILT) * Math.exp(odds));
    });
  });
}

function weigh(odds: readonly Float64Array[], inches: readonly number[], best: Map<string, Weighed>): void {
  const [low, high] = [Math.min(...inches), Math.max(...inches)];
  for (const sign of [1, -1] as const)
    for (let first = -MOST_BEFORE; first <= MOST_READING + low - high; first++) {
      const byInches = sign === 1 ? first - low : first + high;
      const sumOf = (shown: (reading: number) => number) =>
        inches.reduce((sum, inch, i) => sum + (odds[i]?.[shown(sign * inch + byInches)] ?? 0), 0);
      const isFootSeen = first < FOOT && first + high - low > FOOT;
      const sum = Math.max(sumOf(asPrinted), isFootSeen ? sumOf(fromOneAgain) - AGAIN : -Infinity);
      const key = `${sign} ${byInches}`;
      if (sum > (best.get(key)?.sum ?? -Infinity)) best.set(key, { sign, byInches, sum });
    }
}

const asPrinted = (reading: number) => reading;
/** 0: a foot, where some other sign is printed. */
const fromOneAgain = (reading: number) => (reading < FOOT ? reading : reading % FOOT);
