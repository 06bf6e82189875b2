/**
 * Uncertainty of a quantity derived from the adjusted unknowns.
 *
 * Model    q = q(x), g = dq/dx: u^2 = g^T N^-1 g with N = J^T J (JCGM 100:2008, 5.2 and JCGM 102; clauses from memory).
 *          With a = N^-1 g every observation equation i contributes (J_i a)^2, and these sum to u^2: the budget.
 */
import type { Adjustment } from './adjustment.ts';
import { BUDGET_GROUPS, type BudgetGroup } from './budget-group.ts';

export type Gradient = readonly { readonly index: number; readonly d: number }[];

export type DerivedVariance = {
  readonly variance: number;
  readonly byGroup: ReadonlyMap<BudgetGroup, number>;
};

export function derivedVariance(adjustment: Adjustment, gradient: Gradient): DerivedVariance {
  const a = timesCovariance(adjustment, gradient);
  const { equations } = adjustment.best.fitted;
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

/** N^-1 g = L^-T (L^-1 g). */
function timesCovariance({ lowerInverse, layout }: Adjustment, gradient: Gradient): Float64Array {
  const n = layout.size;
  const half = new Float64Array(n);
  for (const { index, d } of gradient) {
    for (let i = index; i < n; i++)
      half[i] = (half[i] as number) + (lowerInverse[i * n + index] as number) * d;
  }
  const full = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    let sum = 0;
    for (let i = j; i < n; i++) sum += (lowerInverse[i * n + j] as number) * (half[i] as number);
    full[j] = sum;
  }
  return full;
}
