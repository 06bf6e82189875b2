/**
 * How far along its edge a blade lies from where it was expected, told by its whole look: figures and dirt are no lattice, and are not
 * taken for their neighbours.
 *
 * Model    brightness over reading and distance from the edge, each row less its mean; correlation of the seed's with that of the frame
 *          for shifts of the reading and a little stretch; the likest, then finer about it
 * Fails    null where none is like the seed
 */
import { type Frame, placeIn } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import type { Rough } from './lattice-search.ts';
import { levelAt } from './level-at.ts';
import { type ProjectiveScale, placeOf } from './projective-scale.ts';

export type Strip = { readonly rows: readonly Float64Array[]; readonly fromMm: number };
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
const STRETCHES = [-0.024, -0.012, 0, 0.012, 0.024];
const FINE_STRETCHES = [-0.006, -0.003, 0, 0.003, 0.006];
const FINE_REACH_MM = 3;
/** Of another part of the tape the strokes alone are as like: about a half. */
const LEAST_LIKENESS = 0.65;
/** A clean blade is about as like an inch farther on: then the nearest is meant. */
const FAR_LOSS = 0.2;

export function stripOf(gray: Gray, { frame, rough, pxPerMm }: Blade, fromMm: number, toMm: number): Strip {
  const count = Math.round((toMm - fromMm) / STEP_MM) + 1;
  return {
    fromMm,
    rows: ROWS_MM.map((acrossMm) => {
      const t = acrossMm * pxPerMm;
      return Float64Array.from({ length: count }, (_, i) => {
        const s = placeOf(rough.scale, fromMm + i * STEP_MM) + rough.shear * t;
        return levelAt(gray, ...placeIn(frame, s, t));
      });
    }),
  };
}

/** The scale that the blade has there, as the seed's strip tells. */
export function scaleAlike(gray: Gray, blade: Blade, seed: Strip): ProjectiveScale | null {
  const rough = likest(gray, blade, seed, { stretches: STRETCHES, reachMm: REACH_MM, every: 2 });
  if (!rough) return null;
  const there = { ...blade, rough: { ...blade.rough, scale: rough.scale } };
  const fine = likest(gray, there, seed, { stretches: FINE_STRETCHES, reachMm: FINE_REACH_MM, every: 1 });
  return fine && fine.likeness > LEAST_LIKENESS ? fine.scale : null;
}

/** every: of shifts and of rows, one of so many. */
type Search = { readonly stretches: readonly number[]; readonly reachMm: number; readonly every: number };
type Likest = { readonly preferred: number; readonly scale: ProjectiveScale; readonly likeness: number };

function likest(gray: Gray, blade: Blade, seed: Strip, { stretches, reachMm, every }: Search): Likest | null {
  const length = (seed.rows[0]?.length ?? 0) - 1;
  const toMm = seed.fromMm + length * STEP_MM;
  const reach = Math.round(reachMm / STEP_MM);
  let best: Likest | null = null;
  for (const stretch of stretches) {
    const scale = { ...blade.rough.scale, b: blade.rough.scale.b * (1 + stretch) };
    const there = { ...blade, rough: { ...blade.rough, scale } };
    const strip = stripOf(gray, there, seed.fromMm - reachMm, toMm + reachMm);
    for (let shift = 0; shift <= 2 * reach; shift += every) {
      const likeness = correlation(seed.rows, strip.rows, shift, every);
      const preferred = likeness - FAR_LOSS * Math.abs(shift / reach - 1);
      if (preferred > (best?.preferred ?? 0))
        best = { preferred, scale: shiftedBy(scale, (shift - reach) * STEP_MM, seed.fromMm, toMm), likeness };
    }
  }
  return best;
}

/** What was expected at a reading lies at another. */
function shiftedBy(scale: ProjectiveScale, byMm: number, fromMm: number, toMm: number): ProjectiveScale {
  const middle = (fromMm + toMm) / 2;
  return { ...scale, a: scale.a + placeOf(scale, middle + byMm) - placeOf(scale, middle) };
}

function correlation(
  a: readonly Float64Array[],
  b: readonly Float64Array[],
  shift: number,
  every: number,
): number {
  let [ab, aa, bb] = [0, 0, 0];
  for (let k = 0; k < a.length; k += every) {
    const row = a[k] as Float64Array;
    const other = (b[k] as Float64Array).subarray(shift, shift + row.length);
    const [ma, mb] = [meanOf(row), meanOf(other)];
    for (let i = 0; i < row.length; i++) {
      const [x, y] = [(row[i] as number) - ma, (other[i] as number) - mb];
      ab += x * y;
      aa += x * x;
      bb += y * y;
    }
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

function meanOf(row: Float64Array): number {
  let sum = 0;
  for (const value of row) sum += value;
  return sum / row.length;
}
