/**
 * A tape in a picture, with nothing marked: its graduations, and their readings where its numerals can be read.
 *
 * Model    a long straight edge with a bright strip of even width beside it (guess-lines.ts); across the strip strokes that come again and
 *          again, by a comb of equal or slowly changing spacing; the lattice of graduations through them (assist-lattice.ts), carried on to both
 *          ends; readings from the numerals (guess-numerals.ts)
 * Assumes  a blade of inches, 12 to 27 mm wide, brighter than what is beside it, strokes of whole inches across most of it
 * Fails    'guess/no-tape' where no strip has such strokes; readings null where numerals do not tell
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { MM_PER_INCH } from '../basics/units.ts';
import { findLattice } from './assist-lattice.ts';
import type { FoundMark } from './assist-sight.ts';
import { type Frame, placeIn } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import { type Comb, combs } from './guess-comb.ts';
import type { LongEdge } from './guess-lines.ts';
import { type AboutStroke, type ReadNumerals, readNumerals } from './guess-numerals.ts';
import { isInPicture, levelAt } from './level-at.ts';
import type { Point } from './point.ts';

export type GuessedTape = {
  /** In the order along the blade; readings as by the numerals, or, where these do not tell, counted from a start of no meaning. */
  readonly marks: readonly FoundMark[];
  readonly numerals: ReadNumerals | null;
  readonly pxPerMm: number;
};
export type NoTape = { readonly code: 'guess/no-tape'; readonly strips: number };

const MOST_STRIPS = 14;
const MOST_COMBS = 5;
const ROUNDS = 4;
/** What counting begins with before the readings are known: lattices need them above zero. */
const BASE = 20;

export function guessTape(gray: Gray, edges: readonly LongEdge[]): Result<GuessedTape, NoTape> {
  const strips = edges.flatMap((edge) => stripAt(gray, edge) ?? []).slice(0, MOST_STRIPS);
  for (const strip of strips)
    for (const comb of combs(gray, strip).slice(0, MOST_COMBS)) {
      for (const part of partsOf(comb)) {
        const lattice = latticeOn(gray, strip, part);
        if (lattice) return ok(read(gray, lattice));
      }
    }
  return fail({ code: 'guess/no-tape', strips: strips.length });
}

/** All of it, and where dirt or shadow spoil a part, halves of it. */
function partsOf(comb: Comb): readonly Comb[] {
  const { places } = comb;
  const half = Math.max(4, Math.ceil(places.length / 2));
  if (places.length < 6) return [comb];
  return [comb, { ...comb, places: places.slice(0, half) }, { ...comb, places: places.slice(-half) }];
}

export type Strip = Frame & { readonly lengthPx: number; readonly widthPx: number };

const MOST_WIDTH = 0.35;

/** Bright for some way inwards, then dark again, at much the same distance all along. */
function stripAt(gray: Gray, { from, to, inward }: LongEdge): Strip | null {
  const lengthPx = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along: Point = [(to[0] - from[0]) / lengthPx, (to[1] - from[1]) / lengthPx];
  const frame: Frame = { origin: from, along, across: inward };
  const reach = Math.round(MOST_WIDTH * lengthPx);
  const widths: number[] = [];
  for (let part = 0.08; part < 0.95; part += 0.12) {
    const level = (t: number) => {
      let sum = 0;
      for (let k = -4; k <= 4; k++) {
        const [x, y] = placeIn(frame, part * lengthPx + 2 * k, t);
        sum += levelAt(gray, x, y);
      }
      return sum / 9;
    };
    const outside = level(-4);
    const rise: number[] = [];
    for (let t = 6; t <= reach; t++) rise.push(level(t - 2) - level(t + 2));
    const inside = (level(5) + level(8)) / 2;
    const drop = rise.findIndex((v, i) => v > 0.4 * (inside - outside) && v >= (rise[i + 1] ?? 0));
    if (drop >= 0) widths.push(drop + 6);
  }
  if (widths.length < 5) return null;
  widths.sort((a, b) => a - b);
  const widthPx = widths[Math.floor(widths.length / 2)] as number;
  const alike = widths.filter((w) => Math.abs(w - widthPx) < Math.max(3, 0.15 * widthPx)).length;
  if (alike < 4 || widthPx < 9) return null;
  const middle = placeIn(frame, lengthPx / 2, widthPx / 2);
  return isInPicture(gray, ...middle) ? { ...frame, lengthPx, widthPx } : null;
}

type OnStrip = { readonly marks: readonly FoundMark[]; readonly strip: Strip };

function latticeOn(gray: Gray, strip: Strip, { places, pitchPx }: Comb): OnStrip | null {
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined || places.length < 4) return null;
  const named = (s: number, inches: number) => ({
    placePx: placeIn(strip, s, 1),
    readingMm: MM_PER_INCH * inches,
    sigmaPx: 0.05 * pitchPx,
  });
  let ends = [named(first, BASE), named(last, BASE + places.length - 1)] as const;
  let marks: readonly FoundMark[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const found = findLattice(gray, ends);
    if (!found.ok) break;
    const wholes = wholesOf(found.value.marks);
    if (marks.length > 0 && wholes.length <= wholesOf(marks).length) break;
    marks = found.value.marks;
    const [low, high] = [wholes[0], wholes.at(-1)];
    if (!low || !high) break;
    ends = [low, high].map(({ placePx, readingMm }) => ({
      placePx,
      readingMm: readingMm ?? 0,
      sigmaPx: 0.03 * pitchPx,
    })) as unknown as typeof ends;
  }
  return wholesOf(marks).length >= 4 ? { marks, strip } : null;
}

const inchesOf = ({ readingMm }: FoundMark) => (readingMm ?? 0) / MM_PER_INCH;
const isWhole = (mark: FoundMark) => Math.abs(inchesOf(mark) - Math.round(inchesOf(mark))) < 1e-6;
const wholesOf = (marks: readonly FoundMark[]): readonly FoundMark[] =>
  marks.filter(isWhole).sort((a, b) => inchesOf(a) - inchesOf(b));

function read(gray: Gray, { marks, strip }: OnStrip): GuessedTape {
  const wholes = wholesOf(marks);
  const apart = (a: FoundMark, b: FoundMark) =>
    Math.hypot(a.placePx[0] - b.placePx[0], a.placePx[1] - b.placePx[1]);
  const strokes = wholes.map((mark, i): AboutStroke => {
    const beside = wholes[i + 1] ?? wholes[i - 1] ?? mark;
    const inches = Math.abs(inchesOf(beside) - inchesOf(mark));
    const unit = apart(beside, mark) / inches;
    // Upright for a reader to whom the blade runs to the right: down is across it, whichever edge was found.
    const down: Point = [-strip.along[1], strip.along[0]];
    const isDown = down[0] * strip.across[0] + down[1] * strip.across[1] > 0;
    const off =
      (mark.placePx[0] - strip.origin[0]) * strip.along[0] +
      (mark.placePx[1] - strip.origin[1]) * strip.along[1];
    return (u, v) => {
      const [x, y] = placeIn(strip, off + u * unit, (isDown ? v : 1 - v) * strip.widthPx);
      return levelAt(gray, x, y);
    };
  });
  const numerals = readNumerals(strokes);
  const [low, high] = [wholes[0], wholes.at(-1)] as [FoundMark, FoundMark];
  const pxPerMm = apart(low, high) / (MM_PER_INCH * (inchesOf(high) - inchesOf(low)));
  if (!numerals) return { marks, numerals, pxPerMm };
  const first = inchesOf(low);
  const renamed = marks.map((mark) => ({
    ...mark,
    readingMm: MM_PER_INCH * (numerals.first + numerals.grows * (inchesOf(mark) - first)),
  }));
  return { marks: renamed.filter(({ readingMm }) => readingMm > 0), numerals, pxPerMm };
}
