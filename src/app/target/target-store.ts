/** What is under way in looking for the printed target, and how it ended where it found nothing. What was found is marks. */
import type { VisionFailure } from '../../vision/vision-failure.ts';
import type { PictureFailure } from '../media/picture-of.ts';
import { createSearches, type UnderWay } from '../media/searches.ts';

export type SearchFailure = VisionFailure | PictureFailure;

type Ended =
  /** `missing`: markers that were not found; all of them where there is no target. */
  | { readonly is: 'done'; readonly missing: readonly number[] }
  | { readonly is: 'failed'; readonly failure: SearchFailure };
export type Search = UnderWay | Ended;

export const targetSearches = createSearches<Ended>();
