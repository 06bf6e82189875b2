/**
 * The graduations of a tape along the push rod, of which none is named: their strokes, not their readings.
 *
 * Model    combs of long strokes beside the rod (stroke-combs.ts), the best first; each measured as if its first and last stroke had been named
 *          (assist-lattice.ts), then carried on to both ends. One is taken where its strokes are as long as those of inches, halves and quarters
 *          are beside each other (stroke-lengths.ts): a lattice that sits a part of an inch off, or is of another width, is none
 * Assumes  a tape of inches, along the rod within twelve degrees, one whose strokes of whole inches are the longest
 * Fails    'tape/not-seen' where none of the combs is such a lattice
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { MM_PER_INCH } from '../basics/units.ts';
import { type MeasuredLattice, measureLattice } from './assist-lattice.ts';
import type { AssistQuestion, AssistSight, FailureOf, FoundMark } from './assist-sight.ts';
import { placeIn } from './assist-tape-edge.ts';
import { median } from './biweight.ts';
import type { Gray } from './gray.ts';
import { countedAs, isWholeInch } from './name-strokes.ts';
import { dot, minus, type Point } from './point.ts';
import { valueAt } from './projective-scale.ts';
import { readNumerals } from './read-numerals.ts';
import { type Comb, strokeCombs } from './stroke-combs.ts';
import { strokeLengthMm } from './stroke-lengths.ts';

/** From face to pin. Common practice, no source. */
const ROD_MM = [90, 240] as const;
/** Of an inch: the comb runs along the middle of the blade, and the nearer edge is measured from. */
const ASIDE = 0.3;
const ROUNDS = 4;
const LEAST_WHOLES = 6;
/** What the first of a comb counts: lattices have no readings below zero. */
const FIRST_INCH = 20;
/** A half must be longer than quarters, by this much. */
const HALF_LONGER_MM = 0.4;
/** Three of four whole ones over halves. In lattices of a half or three quarters of an inch this is some 1.4: halves over quarters, quarters over eighths. */
const WHOLE_OVER_HALF = 1.7;
/** Of the share of pairs from a half. Of three and three that are alike one order in ten is as far from it. */
const MOST_UNLIKE = 0.4;

/** Readings are those of the numerals where these can be read (isRead); else they count along the rod from a start of no meaning. */
export function findTape(
  gray: Gray,
  question: Extract<AssistQuestion, { readonly of: 'tape-strokes' }>,
): Result<AssistSight, FailureOf<'tape'>> {
  const lattice = findStrokes(gray, question);
  return lattice.ok ? ok(withNumerals(gray, lattice.value, question.facePx)) : lattice;
}

function withNumerals(gray: Gray, lattice: MeasuredLattice, facePx: Point): AssistSight {
  const { marks, frame, scale } = lattice;
  const faceMm = valueAt(scale, dot(minus(facePx, frame.origin), frame.along));
  const count = readNumerals(gray, lattice, faceMm);
  return count ? { marks: countedAs(count, marks), isRead: true } : { marks };
}

function findStrokes(
  gray: Gray,
  { facePx, pinPx }: Extract<AssistQuestion, { readonly of: 'tape-strokes' }>,
): Result<MeasuredLattice, FailureOf<'tape'>> {
  const [longest, shortest] = [MM_PER_INCH / ROD_MM[0], MM_PER_INCH / ROD_MM[1]];
  for (const comb of strokeCombs(gray, facePx, pinPx, [shortest, longest]))
    for (const part of partsOf(comb))
      for (const aside of [ASIDE, -ASIDE]) {
        const lattice = latticeOn(gray, part, aside * part.stepPx);
        if (lattice && isTape(gray, lattice)) return ok(twiceAsWide(gray, lattice) ?? lattice);
      }
  return fail({ code: 'tape/not-seen' });
}

/** All of it, and where dirt or shadow spoil a part, halves of it. */
function partsOf(comb: Comb): readonly Comb[] {
  const { places } = comb;
  if (places.length < 7) return [comb];
  const half = Math.ceil(places.length / 2);
  return [comb, { ...comb, places: places.slice(0, half) }, { ...comb, places: places.slice(-half) }];
}

function latticeOn(gray: Gray, { frame, places, stepPx }: Comb, asidePx: number): MeasuredLattice | null {
  const named = (s: number, inches: number) => ({
    placePx: placeIn(frame, s, asidePx),
    readingMm: MM_PER_INCH * inches,
    sigmaPx: 0.05 * stepPx,
  });
  let low: ReturnType<typeof named> = named(places[0] as number, FIRST_INCH);
  let high: typeof low = named(places.at(-1) as number, FIRST_INCH + places.length - 1);
  let best: MeasuredLattice | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const found = measureLattice(gray, [low, high]);
    if (!found.ok) break;
    const wholes = wholesOf(found.value.marks);
    const [first, last] = [wholes[0], wholes.at(-1)];
    if (!first || !last || (best && wholes.length <= wholesOf(best.marks).length)) break;
    best = found.value;
    [low, high] = [first, last].map(({ placePx, readingMm }) => ({
      placePx,
      readingMm: readingMm ?? 0,
      sigmaPx: 0.03 * stepPx,
    })) as [typeof low, typeof low];
  }
  return best;
}

/** Halves may pass for whole inches where dirt lies on these; whole inches do not pass for halves. */
function twiceAsWide(gray: Gray, { marks }: MeasuredLattice): MeasuredLattice | null {
  const wholes = wholesOf(marks);
  for (const first of [0, 1]) {
    const every = wholes.filter((_, i) => i % 2 === first);
    const [low, high] = [every[0], every.at(-1)].map(
      (mark) =>
        mark && {
          placePx: mark.placePx,
          readingMm: MM_PER_INCH * FIRST_INCH + ((mark.readingMm ?? 0) - (every[0]?.readingMm ?? 0)) / 2,
          sigmaPx: mark.sigmaPx,
        },
    );
    const lattice = low && high && measureLattice(gray, [low, high]);
    if (lattice?.ok && isTape(gray, lattice.value)) return lattice.value;
  }
  return null;
}

const wholesOf = (marks: readonly FoundMark[]) => marks.filter(isWholeInch);

/**
 * Strokes are longer from one kind to the next; and whole ones are alike: of a lattice of three quarters of an inch, or of a half, every other
 * whole one is longer than those between.
 */
function isTape(gray: Gray, lattice: MeasuredLattice): boolean {
  const strokes = lattice.marks.flatMap(({ readingMm }) => {
    const lengthMm = strokeLengthMm(gray, lattice, readingMm ?? 0);
    return lengthMm === null ? [] : [{ quarter: Math.round((4 * (readingMm ?? 0)) / MM_PER_INCH), lengthMm }];
  });
  const lengthsMm = (every: number, first: number) =>
    strokes.filter(({ quarter }) => quarter % every === first).map(({ lengthMm }) => lengthMm);
  const [wholes, halves] = [lengthsMm(4, 0), lengthsMm(4, 2)];
  const [first, last] = [lengthsMm(4, 1), lengthsMm(4, 3)];
  if (wholes.length < LEAST_WHOLES || Math.min(first.length, halves.length, last.length) === 0) return false;
  const longer = shareLonger(lengthsMm(8, 0), lengthsMm(8, 4));
  // Numerals make the quarters on one side of each whole one longer.
  const quarterMm = Math.min(median(first), median(last));
  return (
    Math.abs(longer - 0.5) < MOST_UNLIKE &&
    median(halves) >= quarterMm + HALF_LONGER_MM &&
    lowerQuarter(wholes) >= WHOLE_OVER_HALF * median(halves)
  );
}

const lowerQuarter = (lengths: Lengths) =>
  [...lengths].sort((a, b) => a - b)[Math.floor(lengths.length / 4)] as number;

type Lengths = readonly number[];

/** Share of the pairs, one of each, in which the first is longer; those alike count half. */
function shareLonger(ones: Lengths, others: Lengths): number {
  const pairs = ones.flatMap((one) => others.map((other) => (Math.sign(one - other) + 1) / 2));
  return pairs.reduce((sum, each) => sum + each, 0) / pairs.length;
}
