import type { Chamber } from '../../finding/chamber.ts';
import { chamberSizes } from '../../finding/chamber-sizes.ts';
import { US_RULE_SET } from '../../finding/rule-sets.ts';

/** Outside diameter of the chamber's clamp band by the published table; null where the type is not known or has no band. */
export function bandDiameterMm(chamber: Chamber | null): number | null {
  if (chamber === null || chamber.family === 'unlisted' || chamber.family === 'bolt') return null;
  const size = chamberSizes(US_RULE_SET).find(
    ({ family, type }) => family === chamber.family && type === chamber.type,
  );
  return size?.outsideDiameterMm ?? null;
}
