/** An adjusted problem: the geometry found, what rivals it, and the means to take the uncertainty of anything from it. */
import type { Layout } from './layout.ts';
import type { MarkRows } from './linearise.ts';
import type { Problem } from './problem.ts';
import type { Solution } from './search.ts';

export type Adjustment = {
  readonly problem: Problem;
  readonly layout: Layout;
  readonly best: Solution;
  /** Other minima, each with how much larger its chi-square is; lowest first. */
  readonly rivals: readonly { readonly solution: Solution; readonly excess: number }[];
  readonly markRows: readonly MarkRows[];
  /** Inverse of the Cholesky factor of J^T J: quadratic forms in the covariance come from it. */
  readonly lowerInverse: Float64Array;
};
