/**
 * Uncertainty of a quantity derived from the adjusted unknowns.
 *
 * Model    q = q(x), g = dq/dx: u^2 = g^T N^-1 g with N = J^T J (JCGM 100:2008, 5.2 and JCGM 102; clauses from memory).
 *          With a = N^-1 g every observation equation i contributes (J_i a)^2, and these sum to u^2: the budget.
 */
import { sparseSolve } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { BUDGET_GROUPS, type BudgetGroup } from './budget-group.ts';

export type Gradient = readonly { readonly index: number; readonly d: number }[];

export type DerivedVariance = {
  readonly variance: number;
  readonly byGroup: ReadonlyMap<BudgetGroup, number>;
};

export function derivedVariance(adjustment: Adjustment, gradient: Gradient): DerivedVariance {
  const { equations } = adjustment.best.fitted;
  const g = new Float64Array(equations.unknowns);
  for (const { index, d } of gradient) g[index] = (g[index] as number) + d;
  const a = sparseSolve(adjustment.factor, g);
  const byGroup = new Map<BudgetGroup, number>(BUDGET_GROUPS.map((group) => [group, 0]));
  let variance = 0;
  for (let row = 0; row < equations.rows; row++) {
    const part = equations.rowDot(row, a) ** 2;
    const group = equations.groups[row] as BudgetGroup;
    byGroup.set(group, (byGroup.get(group) ?? 0) + part);
    variance += part;
  }
  return { variance, byGroup };
}
