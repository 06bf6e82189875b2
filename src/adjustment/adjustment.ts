/** An adjusted problem: the geometry found, what rivals it, and the means to take the uncertainty of anything from it. */
import type { SparseFactor } from '../basics/sparse-symmetric.ts';
import type { Layout } from './layout.ts';
import type { MarkRows } from './linearise.ts';
import type { Problem } from './problem.ts';
import type { Solution } from './run.ts';

export type Adjustment = {
  readonly problem: Problem;
  readonly layout: Layout;
  readonly best: Solution;
  /** Other minima, each with how much larger its chi-square is; lowest first. */
  readonly rivals: readonly { readonly solution: Solution; readonly excess: number }[];
  readonly markRows: readonly MarkRows[];
  /** Of J^T J: whatever is asked of the covariance comes from it. */
  readonly factor: SparseFactor;
};
