/**
 * What the solution found follows its observations by, to first order.
 *
 * Model    step = N^-1 J^T (r - d), to be taken off x; d displacements in units of standard uncertainties (displacements.ts);
 *          N^-1 J^T is made once, so that a step is a product.
 */
import { sparseSolve } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { observationRows } from './displacements.ts';

export type LinearResponse = {
  readonly observations: number;
  readonly step: (displacements: Float64Array) => Float64Array;
  /** |r - d|^2 at the solution found. */
  readonly chiSquare: (displacements: Float64Array) => number;
};

export function linearResponse({ best, layout, factor, markRows }: Adjustment): LinearResponse {
  const n = layout.size;
  const { equations, chiSquare: found } = best.fitted;
  const rows = observationRows({ equations, markRows });
  const responses = new Float64Array(rows.length * n);
  rows.forEach((row, k) => {
    responses.set(sparseSolve(factor, equations.row(row)), k * n);
  });
  const residuals = rows.map((row) => equations.residuals[row] as number);
  const ofBounds = found - residuals.reduce((sum, r) => sum + r * r, 0);
  const rest = sparseSolve(factor, equations.normal().gradient);

  function step(displacements: Float64Array): Float64Array {
    const sum = rest.slice();
    for (let k = 0; k < rows.length; k++) {
      const d = displacements[k] as number;
      for (let i = 0; i < n; i++) sum[i] = (sum[i] as number) - d * (responses[k * n + i] as number);
    }
    return sum;
  }
  function chiSquare(displacements: Float64Array): number {
    let sum = ofBounds;
    for (let k = 0; k < residuals.length; k++)
      sum += ((residuals[k] as number) - (displacements[k] as number)) ** 2;
    return sum;
  }
  return { observations: rows.length, step, chiSquare };
}
