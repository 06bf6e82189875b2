/** How followed clips see the plane in which the arm turns, by their tracks. */
import type { ArmSight } from '../../measurement/arm-sight.ts';
import { createSearches, type UnderWay } from '../media/searches.ts';

/** sight: null where the clip does not show it. */
type Ended = { readonly is: 'ended'; readonly sight: ArmSight | null };
export type ArmSightSearch = UnderWay | Ended;

const MOST_KEPT = 10;

export const armSights = createSearches<Ended>(MOST_KEPT);
