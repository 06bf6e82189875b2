/** What was guessed of pictures in which nothing was marked. Nothing of it ever comes into the record. */
import type { RoughGuess } from '../../vision/rough-sight.ts';
import { createSearches, type UnderWay } from '../media/searches.ts';

/** failed: the picture cannot be shown or read, which is said where it is shown. */
type Ended = { readonly is: 'done'; readonly guess: RoughGuess } | { readonly is: 'failed' };
export type RoughSearch = UnderWay | Ended;

const MOST_KEPT = 12;

export const roughSearches = createSearches<Ended>(MOST_KEPT);
