/**
 * How far along its edge a blade lies from where it was expected, told by its whole look: figures and dirt are no lattice, and are not
 * taken for their neighbours.
 *
 * Model    brightness over reading and distance from the edge, each row less its mean; correlation of the seed's with that of the frame
 *          for shifts of the reading and a little stretch; the likest, then finer about it
 * Fails    null where none is like the seed
 */
import { type Frame, levelIn } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import type { Rough } from './lattice-search.ts';
import { type ProjectiveScale, placeOf } from './projective-scale.ts';

export type Strip = { readonly fromMm: number; readonly coarse: Sought; readonly fine: Sought };
/** Rows less their means, and the sum of their squares. */
type Sought = { readonly rows: readonly Float64Array[]; readonly length: number; readonly square: number };
export type Blade = {
  readonly frame: Frame;
  /** scale: of the edge. */
  readonly rough: Rough;
  readonly pxPerMm: number;
};

const STEP_MM = 0.5;
const ROWS_MM = [0.8, 2, 3.2, 4.6, 6, 7.6, 9.2, 10.8];
/** A hand's width of sway shifts a tape so far against gravel that lies behind. */
const REACH_MM = 64;
/** The likely ones first, as of shifts: the others then need not be tried in full; further out only while it gets likelier. */
const STRETCHES = [[0], [-0.012, 0.012], [-0.024, 0.024]];
const FINE_STRETCHES = [[0], [-0.003, 0.003], [-0.006, 0.006]];
const FINE_REACH_MM = 3;
/** Of shifts and of rows, one of so many. */
const COARSE_EVERY = 2;
/** Of another part of the tape the strokes alone are as like: about a half. */
const LEAST_LIKENESS = 0.65;
/** A clean blade is about as like an inch farther on: then the nearest is meant. */
const FAR_LOSS = 0.2;

export function stripOf(gray: Gray, blade: Blade, fromMm: number, toMm: number): Strip {
  const rows = rowsOf(gray, blade, { fromMm, toMm, every: 1 });
  return { fromMm, coarse: lessMeans(rows.filter((_, k) => k % COARSE_EVERY === 0)), fine: lessMeans(rows) };
}

/** every: of the rows, one of so many. */
function rowsOf(
  gray: Gray,
  { frame, rough, pxPerMm }: Blade,
  { fromMm, toMm, every }: { readonly fromMm: number; readonly toMm: number; readonly every: number },
): readonly Float64Array[] {
  const count = Math.round((toMm - fromMm) / STEP_MM) + 1;
  const places = Float64Array.from({ length: count }, (_, i) => placeOf(rough.scale, fromMm + i * STEP_MM));
  return ROWS_MM.filter((_, k) => k % every === 0).map((acrossMm) => {
    const t = acrossMm * pxPerMm;
    const levels = new Float64Array(count);
    for (let i = 0; i < count; i++)
      levels[i] = levelIn(gray, frame, (places[i] as number) + rough.shear * t, t);
    return levels;
  });
}

/** The scale that the blade has there, as the seed's strip tells. */
export function scaleAlike(
  gray: Gray,
  blade: Blade,
  { fromMm, coarse, fine }: Strip,
): ProjectiveScale | null {
  const rough = likest(gray, blade, fromMm, {
    sought: coarse,
    stretches: STRETCHES,
    reachMm: REACH_MM,
    every: COARSE_EVERY,
  });
  if (!rough) return null;
  const there = { ...blade, rough: { ...blade.rough, scale: rough.scale } };
  const best = likest(gray, there, fromMm, {
    sought: fine,
    stretches: FINE_STRETCHES,
    reachMm: FINE_REACH_MM,
    every: 1,
  });
  return best && best.likeness > LEAST_LIKENESS ? best.scale : null;
}

/** stretches: step by step outwards. every: of shifts and of rows, one of so many. */
type Search = {
  readonly sought: Sought;
  readonly stretches: readonly (readonly number[])[];
  readonly reachMm: number;
  readonly every: number;
};
type Likest = { readonly preferred: number; readonly scale: ProjectiveScale; readonly likeness: number };

function likest(
  gray: Gray,
  blade: Blade,
  fromMm: number,
  { sought, stretches, reachMm, every }: Search,
): Likest | null {
  const toMm = fromMm + (sought.length - 1) * STEP_MM;
  const reach = Math.round(reachMm / STEP_MM);
  const shifts = fromMiddle(reach, every);
  let best: Likest | null = null;
  for (const outwards of stretches) {
    const before: Likest | null = best;
    for (const stretch of outwards) {
      const scale = { ...blade.rough.scale, b: blade.rough.scale.b * (1 + stretch) };
      const there = { ...blade, rough: { ...blade.rough, scale } };
      const rows = summedUp(rowsOf(gray, there, { fromMm: fromMm - reachMm, toMm: toMm + reachMm, every }));
      for (const shift of shifts) {
        const loss = FAR_LOSS * Math.abs(shift / reach - 1);
        // Nothing is more like than 1.
        if (1 - loss < (best?.preferred ?? 0)) break;
        const likeness = correlation(sought, rows, shift);
        const preferred = likeness - loss;
        if (preferred > (best?.preferred ?? 0))
          best = { preferred, scale: shiftedBy(scale, (shift - reach) * STEP_MM, fromMm, toMm), likeness };
      }
    }
    if (best === before) break;
  }
  return best;
}

/** 0 to twice the reach, that first which is nearest to it. */
function fromMiddle(reach: number, every: number): readonly number[] {
  const shifts = [reach];
  for (let off = every; off <= reach; off += every) shifts.push(reach - off, reach + off);
  return shifts;
}

/** What was expected at a reading lies at another. */
function shiftedBy(scale: ProjectiveScale, byMm: number, fromMm: number, toMm: number): ProjectiveScale {
  const middle = (fromMm + toMm) / 2;
  return { ...scale, a: scale.a + placeOf(scale, middle + byMm) - placeOf(scale, middle) };
}

function lessMeans(rows: readonly Float64Array[]): Sought {
  const less = rows.map((row) => {
    const mean = row.reduce((sum, level) => sum + level, 0) / row.length;
    return row.map((level) => level - mean);
  });
  const square = less.reduce((sum, row) => row.reduce((all, level) => all + level * level, sum), 0);
  return { rows: less, length: rows[0]?.length ?? 0, square };
}

/** sums, squares: of all before each. */
type Summed = { readonly row: Float64Array; readonly sums: Float64Array; readonly squares: Float64Array };

function summedUp(rows: readonly Float64Array[]): readonly Summed[] {
  return rows.map((row) => {
    const [sums, squares] = [new Float64Array(row.length + 1), new Float64Array(row.length + 1)];
    for (let i = 0; i < row.length; i++) {
      const level = row[i] as number;
      sums[i + 1] = (sums[i] as number) + level;
      squares[i + 1] = (squares[i] as number) + level * level;
    }
    return { row, sums, squares };
  });
}

function correlation({ rows, length, square }: Sought, others: readonly Summed[], shift: number): number {
  let product = 0;
  let otherSquare = 0;
  for (let k = 0; k < rows.length; k++) {
    const sought = rows[k] as Float64Array;
    const { row, sums, squares } = others[k] as Summed;
    for (let i = 0; i < length; i++) product += (sought[i] as number) * (row[shift + i] as number);
    const sum = (sums[shift + length] as number) - (sums[shift] as number);
    otherSquare += (squares[shift + length] as number) - (squares[shift] as number) - (sum * sum) / length;
  }
  return square > 0 && otherSquare > 0 ? product / Math.sqrt(square * otherSquare) : 0;
}
