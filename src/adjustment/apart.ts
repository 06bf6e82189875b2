/** The largest angle between two cameras' axes, as adjusted: acos of R1^T e3 . R2^T e3. */
import type { Adjustment } from './adjustment.ts';
import { rotationsOf } from './run.ts';

export function apartRad({ layout, best }: Pick<Adjustment, 'layout' | 'best'>): number {
  const rotations = rotationsOf(layout, best);
  let largest = 0;
  for (const [i, a] of rotations.entries())
    for (const b of rotations.slice(i + 1)) {
      const cosine = a[6] * b[6] + a[7] * b[7] + a[8] * b[8];
      largest = Math.max(largest, Math.acos(Math.min(1, Math.max(-1, cosine))));
    }
  return largest;
}
