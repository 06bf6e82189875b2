/**
 * Marks on a rim that was found together with the band's other rings, and what they tell of the ratio of its ellipse's axes.
 *
 * Model    a mark where an edge was seen, on the rim's outline. The adjustment fits a circle through them and takes them for independent; what
 *          the other rings tell of the axis reaches it through how sure they are. So all get one uncertainty: with which five unknowns
 *          through so many independent marks lie as far off as the outline does, and the ratio as far as it does, the larger of the two
 * Fails    null where it has no ellipse
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import type { FoundMark } from './assist-sight.ts';
import { ellipseOf, ringAt } from './coaxial.ts';
import { type Coaxial, changed, outlineMoves, stepOf, unknownsOf } from './fit-coaxial.ts';
import { type Led, onRing } from './lead-band.ts';

export type RimSeen = {
  readonly marks: readonly FoundMark[];
  readonly ratio: number;
  readonly uRatio: number;
};

/** Foot, turn, tilt and radius: what a circle through the marks alone has. */
const OWN = [0, 1, 2, 3, 5] as const;
const LEAST_SIGMA_PX = 0.1;

export function rimMarks(led: Led): RimSeen | null {
  const { coaxial, fit } = led;
  const ratio = ratioOf(coaxial);
  if (ratio === null) return null;
  const n = unknownsOf(coaxial);
  const slopes = Float64Array.from(
    { length: n },
    (_, k) => ((ratioOf(changed(coaxial, k, stepOf(k))) ?? ratio) - ratio) / stepOf(k),
  );
  const places = onRing(led, 0).map(({ w }) => ({ w, outline: ringAt(coaxial.axis, coaxial.rings[0], w) }));
  const rows = outlineMoves(coaxial, 0, places);
  const uRatio = Math.sqrt(square(slopes, fit.covariance));
  const lies = rows.reduce((sum, row) => sum + square(row, fit.covariance), 0);
  const byRatio = uRatio / ownSpread(rows, slopes);
  const sigmaPx = Math.max(LEAST_SIGMA_PX, Math.sqrt(lies / OWN.length), byRatio);
  return {
    ratio,
    uRatio,
    marks: places.map(({ outline }) => ({ placePx: outline.at, sigmaPx, readingMm: null })),
  };
}

function ratioOf({ axis, rings }: Coaxial): number | null {
  const ellipse = ellipseOf(axis, rings[0]);
  return ellipse && ellipse.shortPx / ellipse.longPx;
}

/** Of the ratio, from marks of unit uncertainty alone. */
function ownSpread(rows: readonly Float64Array[], slopes: Float64Array): number {
  const size = OWN.length;
  const normal = new Float64Array(size * size);
  for (const row of rows)
    OWN.forEach((a, i) => {
      OWN.forEach((b, j) => {
        normal[i * size + j] = (normal[i * size + j] as number) + (row[a] as number) * (row[b] as number);
      });
    });
  const lower = choleskyFactor(normal, size);
  if (!lower) return Number.POSITIVE_INFINITY;
  const by = Float64Array.from(OWN, (k) => slopes[k] as number);
  return Math.sqrt(choleskySolve(lower, size, by).reduce((sum, v, i) => sum + v * (by[i] as number), 0));
}

function square(row: Float64Array, covariance: Float64Array): number {
  const n = row.length;
  return row.reduce(
    (sum, a, i) => sum + row.reduce((inner, b, j) => inner + a * b * (covariance[n * i + j] as number), 0),
    0,
  );
}
