/** What was found of one picture's marks in another, by pictures and marks. Nothing of it is in the record before the person takes it. */
import type { GuessSight } from '../../vision/guess-sight.ts';
import { createSearches, type UnderWay } from '../media/searches.ts';

/** failed: whatever the reason, the marks are set by hand. */
type Ended = { readonly is: 'found'; readonly sight: GuessSight } | { readonly is: 'failed' };
export type GuessSearch = UnderWay | Ended;

const MOST_KEPT = 10;

export const guessSearches = createSearches<Ended>(MOST_KEPT);
