/**
 * Do the marks agree with each other and with the model?
 *
 * Model    two sums of squares, each against its degrees of freedom: all equations (rows less unknowns), and the marks alone
 *          (their redundancy, the sum of 1 - J_i N^-1 J_i^T over their rows; this one sees a misfit that many wide priors
 *          would dilute). The less likely of the two counts, its chance doubled for the choice.
 *          For each mark the larger of its two standardised residuals |r_i| / sqrt(1 - J_i N^-1 J_i^T).
 * Assumes  equations whitened; a coordinate that nothing else controls (redundancy under 2 %) cannot be judged and is passed over.
 * Source   Baarda: A testing procedure for use in geodetic networks, 1968 (from memory).
 */
import { chiSquareUpperTail } from '../basics/chi-square.ts';
import { inverseForm } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import type { MarkRows } from './linearise.ts';

const LEAST_REDUNDANCY = 0.02;

export type ResidualTest = {
  /** Of the sum that counts. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
  /** Largest first; marks that cannot be judged are left out. */
  readonly marks: readonly { readonly rows: MarkRows; readonly standardised: number }[];
};

export function residualTest(adjustment: Adjustment): ResidualTest {
  const { equations, chiSquare } = adjustment.best.fitted;
  const tested = adjustment.markRows.map((rows) => {
    const coordinates = [rows.row, rows.row + 1].map((row) => {
      const residual = equations.residuals[row] as number;
      return { residual, redundancy: redundancyOf(adjustment, row) };
    });
    return { rows, coordinates };
  });
  const all = sumTest(chiSquare, equations.rows - adjustment.layout.size);
  const coordinates = tested.flatMap((mark) => mark.coordinates);
  const ofMarks = sumTest(
    coordinates.reduce((sum, { residual }) => sum + residual ** 2, 0),
    coordinates.reduce((sum, { redundancy }) => sum + redundancy, 0),
  );
  const marks = tested
    .map(({ rows, coordinates: both }) => ({
      rows,
      standardised: Math.max(...both.map(standardisedResidual)),
    }))
    .filter(({ standardised }) => standardised >= 0)
    .sort((a, b) => b.standardised - a.standardised);
  const worse = ofMarks.pValue < all.pValue ? ofMarks : all;
  return { ...worse, pValue: Math.min(1, 2 * worse.pValue), marks };
}

function sumTest(chiSquare: number, degreesOfFreedom: number) {
  return { chiSquare, degreesOfFreedom, pValue: chiSquareUpperTail(chiSquare, degreesOfFreedom) };
}

/** -1 where the coordinate has no redundancy to speak of. */
function standardisedResidual({ residual, redundancy }: { residual: number; redundancy: number }): number {
  return redundancy < LEAST_REDUNDANCY ? -1 : Math.abs(residual) / Math.sqrt(redundancy);
}

/** Share of an error in this row that shows in its own residual: 1 - J_i N^-1 J_i^T. */
function redundancyOf({ best, factor }: Adjustment, row: number): number {
  return 1 - inverseForm(factor, best.fitted.equations.row(row));
}
