/**
 * Do the marks agree with each other and with the model?
 *
 * Model    chi-square of the whole fit against its degrees of freedom (equations less unknowns); for each mark the larger of
 *          its two standardised residuals |r_i| / sqrt(1 - J_i N^-1 J_i^T).
 * Assumes  equations whitened; a coordinate that nothing else controls (redundancy under 2 %) cannot be judged and is passed over.
 * Source   Baarda: A testing procedure for use in geodetic networks, 1968 (from memory).
 */
import { chiSquareUpperTail } from '../basics/chi-square.ts';
import type { Adjustment } from './adjust.ts';
import type { MarkRows } from './linearise.ts';

const LEAST_REDUNDANCY = 0.02;

export type ResidualTest = {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
  /** Largest first; marks that cannot be judged are left out. */
  readonly marks: readonly { readonly rows: MarkRows; readonly standardised: number }[];
};

export function residualTest(adjustment: Adjustment): ResidualTest {
  const { equations, chiSquare } = adjustment.best.fitted;
  const degreesOfFreedom = equations.rows - adjustment.layout.size;
  const marks = adjustment.markRows
    .map((rows) => ({
      rows,
      standardised: Math.max(
        standardisedResidual(adjustment, rows.row),
        standardisedResidual(adjustment, rows.row + 1),
      ),
    }))
    .filter(({ standardised }) => standardised >= 0)
    .sort((a, b) => b.standardised - a.standardised);
  return { chiSquare, degreesOfFreedom, pValue: chiSquareUpperTail(chiSquare, degreesOfFreedom), marks };
}

/** -1 where the row has no redundancy to speak of. */
function standardisedResidual({ best, layout, lowerInverse }: Adjustment, row: number): number {
  const { equations } = best.fitted;
  const n = layout.size;
  const half = new Float64Array(n);
  const end = equations.rowEnds[row] as number;
  for (let k = row === 0 ? 0 : (equations.rowEnds[row - 1] as number); k < end; k++) {
    const column = equations.columns[k] as number;
    const value = equations.values[k] as number;
    for (let i = column; i < n; i++)
      half[i] = (half[i] as number) + (lowerInverse[i * n + column] as number) * value;
  }
  const redundancy = 1 - half.reduce((sum, h) => sum + h * h, 0);
  if (redundancy < LEAST_REDUNDANCY) return -1;
  return Math.abs(equations.residuals[row] as number) / Math.sqrt(redundancy);
}
