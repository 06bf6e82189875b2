/** What a measurement returns: every value with its standard uncertainty u, its expanded U at 95 % and its budget. */
import type { BudgetGroup } from '../adjustment/budget-group.ts';

/** A value that is never without its uncertainty. */
export type WithU = {
  readonly value: number;
  /** Standard uncertainty, in the unit of the value. */
  readonly u: number;
  /** Expanded uncertainty at 95 %, two-sided, k = 1.96 (normal). */
  readonly U95: number;
};

export type Measured = WithU & {
  /** Standard uncertainty that each group alone contributes; their squares sum to u squared. */
  readonly budget: readonly { readonly group: BudgetGroup; readonly u: number }[];
};
