/** Where uncertainty comes from: every observation equation belongs to one of these groups. */
export const BUDGET_GROUPS = [
  'marks',
  'tape',
  'target',
  'clamp-band',
  'arm-length',
  'distance',
  'depth',
  'camera',
  'mechanism',
] as const;

export type BudgetGroup = (typeof BUDGET_GROUPS)[number];
