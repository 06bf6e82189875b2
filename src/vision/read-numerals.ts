/**
 * The readings of a tape's whole inches by the numerals printed beside them.
 *
 * Model    numerals stand in the same place beside each whole inch, of one height, all turned the same way, and count up by one: so the unknown is
 *          one count, along the lattice or against it. Layouts (turn, height, place, distance of two digits, which of two stands where one
 *          stands) in turn; of each inch the odds of the digits that a count asks for, and of none beside a single one, each no worse than
 *          some odds of dirt; summed over all inches. A count is worth what its best layout gives
 * Assumes  whole inches up to 39, printed in digits; dirt spoils one numeral and not its neighbour
 * Fails    null where the best count does not beat every other clearly, or its numerals are hardly there
 */
import { MM_PER_INCH } from '../basics/units.ts';
import type { MeasuredLattice } from './assist-lattice.ts';
import type { FoundMark } from './assist-sight.ts';
import { type BladeStrip, bladeStrip, STRIP_STEP_MM } from './blade-strip.ts';
import { digitOdds, KINDS, NONE } from './digit-odds.ts';
import { amountIn, LOOK_LENGTH, lookIn, type SlopeSums, slopeSums, type Turn } from './digit-window.ts';
import type { Gray } from './gray.ts';
import { MOST_FROM_FACE_MM } from './name-strokes.ts';

/** A reading is sign times what the lattice counts, plus by: inches. */
export type Count = { readonly sign: 1 | -1; readonly byInches: number };
/** margin: over the next best count; each: of a whole inch, on the mean; both in logarithms of odds. */
export type NumeralsRead = Count & { readonly margin: number; readonly each: number };

const HEIGHTS_MM = [3.9, 4.7, 5.7, 6.9, 8.3, 10];
/** Of a digit's height. */
const STEP = 1 / 6;
const BESIDE_MM = 11;
const ACROSS_MM = [2.5, 23] as const;
/** Of a digit's slopes: with less nothing is printed there. */
const LEAST_AMOUNT = 0.22;
const MOST_READING = 39;
/** Strokes that are taken for those of whole inches before the tape begins. */
const MOST_BEFORE = 2;
/** Places that are tried of each turn and height. */
const MOST_PLACES = 12;
/** In steps. */
const PITCHES = [3, 4, 5];
/** One numeral in so many is dirt, or not as it should be. */
const SPOILT = 0.08;
/** A tape that begins elsewhere than at the face is so much less usual. Common practice, no source. */
const UNUSUAL = 2.5;
/** Logarithms of odds. Chosen on seeds that the tables of docs/assists.md do not have. */
const LEAST_MARGIN = 5;
const LEAST_EACH = 1.5;
/** What a place without print tells of a digit. */
const BLANK = -4;

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
export function wholesBetween(marks: readonly FoundMark[]): readonly number[] {
  const inches = marks.map(({ readingMm }) => (readingMm ?? 0) / MM_PER_INCH);
  const [first, last] = [Math.ceil(Math.min(...inches) - 1e-6), Math.floor(Math.max(...inches) + 1e-6)];
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * MM_PER_INCH);
}

export type Weighed = Count & { readonly sum: number };

/** The best first. */
export function countsOf(
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
      for (const field of fieldsOf(strip, sums, wholesMm, heightMm, isUpright))
        for (const layout of layoutsOn(field)) weigh(oddsOf(field, layout), inches, best);
  const usual = ({ sign, byInches }: Count) =>
    Math.abs(sign * faceMm + byInches * MM_PER_INCH) <= MOST_FROM_FACE_MM ? 0 : -UNUSUAL;
  return [...best.values()]
    .map((count) => ({ ...count, sum: count.sum + usual(count) }))
    .sort((a, b) => b.sum - a.sum);
}

/** Odds of all kinds, for each whole inch, at places a step apart about it. */
type Field = {
  readonly turn: Turn;
  readonly inches: number;
  readonly wide: number;
  readonly high: number;
  readonly odds: Float32Array;
};

function fieldsOf(
  strip: BladeStrip,
  sums: SlopeSums,
  wholesMm: readonly number[],
  heightMm: number,
  isUpright: boolean,
): readonly Field[] {
  const step = (STEP * heightMm) / STRIP_STEP_MM;
  const half = Math.round(BESIDE_MM / STRIP_STEP_MM / step);
  const wide = 2 * half + 1;
  const [from, to] = ACROSS_MM.map((mm) => mm / STRIP_STEP_MM) as [number, number];
  const high = Math.floor((to - from) / step) + 1;
  const length = wholesMm.length * wide * high * KINDS;
  const turns: readonly Turn[] = isUpright ? [0, 2] : [1, 3];
  const fields = turns.map((turn) => ({
    turn,
    inches: wholesMm.length,
    wide,
    high,
    odds: new Float32Array(length).fill(BLANK),
  }));
  const look = new Float32Array(LOOK_LENGTH);
  let at = 0;
  for (const mm of wholesMm) {
    const middle = (mm - strip.firstMm) / strip.stepMm;
    for (let j = 0; j < high; j++)
      for (let i = -half; i <= half; i++, at += KINDS) {
        const window = { x: middle + i * step, y: from + j * step, heightMm };
        if (amountIn(sums, window, isUpright) < LEAST_AMOUNT) {
          for (const { odds } of fields) odds[at + NONE] = Math.LN2;
          continue;
        }
        lookIn(sums, window, isUpright, look);
        for (const { turn, odds } of fields) digitOdds(look, turn, odds, at);
      }
  }
  return fields;
}

/** One digit's place, steps from one to the other of two, and where in these steps the first of two lies from where one stands. */
type Layout = { readonly i: number; readonly j: number; readonly pitch: number; readonly first: number };

function* layoutsOn(field: Field): Generator<Layout> {
  for (const { i, j } of likelyPlaces(field))
    for (const pitch of PITCHES)
      for (const first of [-pitch, -Math.round(pitch / 2), 0]) yield { i, j, pitch, first };
}

/** Where beside most inches some digit stands. */
function likelyPlaces({ inches, wide, high, odds }: Field) {
  const places = Array.from({ length: wide * high }, (_, at) => {
    let sum = 0;
    for (let inch = 0; inch < inches; inch++) {
      const none = odds[(inch * wide * high + at) * KINDS + NONE] as number;
      sum += Math.max(-3, Math.log(Math.max(1e-3, 2 - Math.exp(none))));
    }
    return { i: at % wide, j: Math.floor(at / wide), sum };
  });
  return places.sort((a, b) => b.sum - a.sum).slice(0, MOST_PLACES);
}

/** For each whole inch and each reading. */
function oddsOf(field: Field, { i, j, pitch, first }: Layout): readonly Float64Array[] {
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

function oddsAt({ wide, high, odds }: Field, inch: number, i: number, j: number, kind: number): number {
  if (i < 0 || j < 0 || i >= wide || j >= high) return kind === NONE ? Math.LN2 : BLANK;
  return Math.max(BLANK, odds[((inch * high + j) * wide + i) * KINDS + kind] as number);
}

function weigh(odds: readonly Float64Array[], inches: readonly number[], best: Map<string, Weighed>): void {
  const [low, high] = [Math.min(...inches), Math.max(...inches)];
  for (const sign of [1, -1] as const)
    for (let first = -MOST_BEFORE; first <= MOST_READING + low - high; first++) {
      const byInches = sign === 1 ? first - low : first + high;
      let sum = 0;
      for (let i = 0; i < inches.length; i++)
        sum += (odds[i] as Float64Array)[sign * (inches[i] as number) + byInches] ?? 0;
      const key = `${sign} ${byInches}`;
      if (sum > (best.get(key)?.sum ?? -Infinity)) best.set(key, { sign, byInches, sum });
    }
}
