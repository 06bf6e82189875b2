/** How likely each rival minimum is beside the one found: exp(-excess / 2), the found one counting 1, all shares summing to 1. */
import type { Adjustment } from './adjustment.ts';

export type RivalShare = { readonly share: number; readonly x: Float64Array };

export function rivalShares({ rivals }: Pick<Adjustment, 'rivals'>): readonly RivalShare[] {
  const weights = rivals.map(({ excess }) => Math.exp(-excess / 2));
  const total = weights.reduce((sum, w) => sum + w, 1);
  return rivals.map(({ solution }, i) => ({ share: (weights[i] as number) / total, x: solution.x }));
}
