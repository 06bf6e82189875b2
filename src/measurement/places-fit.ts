/**
 * Places of a picture by the rows of what they depend on.
 *
 * Model    x = row . byX, y = row . byY, weighted least squares. Settled: fitted anew with what disagrees weighted down (Huber, at
 *          three times the middle residual).
 * Fails    null where the rows do not tell the unknowns apart
 */
import { middleOf } from '../basics/middle.ts';
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';

export type Place = readonly [xPx: number, yPx: number];

export type PlacesFit = readonly [byX: Float64Array, byY: Float64Array];

const ROUNDS = 4;
/** A middle residual by luck finer than this would throw sound places out. */
const FINEST_PX = 0.02;

/** hold: weight of nothing for the last unknown. */
export function placesFit(
  rows: readonly (readonly number[])[],
  to: readonly Place[],
  weights: readonly number[],
  hold = 0,
): PlacesFit | null {
  const size = rows[0]?.length ?? 0;
  const normal = new Float64Array(size * size);
  normal[size * size - 1] = hold;
  const right = [new Float64Array(size), new Float64Array(size)] as const;
  for (const [k, row] of rows.entries())
    for (let i = 0; i < size; i++) {
      const weighted = (weights[k] as number) * (row[i] as number);
      for (const axis of [0, 1] as const)
        right[axis][i] = (right[axis][i] as number) + weighted * (to[k] as Place)[axis];
      for (let j = 0; j <= i; j++)
        normal[size * i + j] = (normal[size * i + j] as number) + weighted * (row[j] as number);
    }
  const factor = choleskyFactor(normal, size);
  return factor && [choleskySolve(factor, size, right[0]), choleskySolve(factor, size, right[1])];
}

export function placeBy([byX, byY]: PlacesFit, row: readonly number[]): Place {
  const along = (by: Float64Array) => row.reduce((sum, value, i) => sum + value * (by[i] as number), 0);
  return [along(byX), along(byY)];
}

/** fitBy: fits with weights of the places; where: the fit takes each of them to. */
export function settledFit<Fit>(
  to: readonly Place[],
  fitBy: (weights: readonly number[]) => Fit | null,
  where: (fitted: Fit, k: number) => Place,
): Fit | null {
  let fitted = fitBy(to.map(() => 1));
  for (let round = 1; fitted !== null && round < ROUNDS; round++) {
    const last = fitted;
    const off = to.map((place, k) => apart(where(last, k), place));
    const middle = middleOf(off) as number;
    fitted = fitBy(off.map((each) => Math.min(1, (3 * Math.max(FINEST_PX, middle)) / each)));
  }
  return fitted;
}

const apart = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);
