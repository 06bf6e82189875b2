/** What a measurement returns: every value with its standard uncertainty u, its expanded U at 95 % and its budget. */
import type { BudgetGroup } from '../adjustment/budget-group.ts';

export type Measured = {
  readonly value: number;
  /** Standard uncertainty, in the unit of the value. */
  readonly u: number;
  /** Expanded uncertainty at 95 %, two-sided, k = 1.96 (normal). */
  readonly U95: number;
  /** Standard uncertainty that each group alone contributes; their squares sum to u squared. */
  readonly budget: readonly { readonly group: BudgetGroup; readonly u: number }[];
};
