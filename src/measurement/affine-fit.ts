/**
 * The affine map that takes some places of a picture nearest to others.
 *
 * Model    p = A q + b, weighted least squares; places in thousands of pixels inside, so that all columns are of one size
 * Fails    null where all places lie on one line
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';

export type Place = readonly [xPx: number, yPx: number];

export function affineFit(
  from: readonly Place[],
  to: readonly Place[],
  weights: readonly number[],
): ((place: Place) => Place) | null {
  const normal = new Float64Array(9);
  const right = [new Float64Array(3), new Float64Array(3)] as const;
  for (const [k, place] of from.entries()) {
    const row = rowOf(place);
    for (let i = 0; i < 3; i++) {
      const weighted = (weights[k] as number) * (row[i] as number);
      for (const axis of [0, 1] as const)
        right[axis][i] = (right[axis][i] as number) + weighted * ((to[k] as Place)[axis] as number);
      for (let j = 0; j < 3; j++)
        normal[3 * i + j] = (normal[3 * i + j] as number) + weighted * (row[j] as number);
    }
  }
  const factor = choleskyFactor(normal, 3);
  if (!factor) return null;
  const [byX, byY] = [choleskySolve(factor, 3, right[0]), choleskySolve(factor, 3, right[1])];
  return (place) => {
    const row = rowOf(place);
    return [along(byX, row), along(byY, row)];
  };
}

type Row = readonly [number, number, number];

const rowOf = ([x, y]: Place): Row => [x / 1000, y / 1000, 1];

function along(by: Float64Array, row: Row): number {
  return (by[0] as number) * row[0] + (by[1] as number) * row[1] + (by[2] as number) * row[2];
}
