/** What was found of one picture's marks in another, by pictures and marks. Nothing of it is in the record before the person takes it. */
import { createStore } from 'zustand/vanilla';
import type { GuessSight } from '../../vision/guess-sight.ts';

/** failed: whatever the reason, the marks are set by hand. */
export type GuessSearch =
  | { readonly is: 'under-way' }
  | { readonly is: 'found'; readonly sight: GuessSight }
  | { readonly is: 'failed' };

/** What was asked about earlier places of the marks goes first. */
const MOST_KEPT = 10;

function createGuessStore() {
  const store = createStore<{ readonly searches: Readonly<Record<string, GuessSearch>> }>(() => ({
    searches: {},
  }));
  return {
    ...store,
    set: (key: string, search: GuessSearch) =>
      store.setState(({ searches: { [key]: _, ...others } }) => ({
        searches: Object.fromEntries([...Object.entries(others).slice(1 - MOST_KEPT), [key, search]]),
      })),
    forget: (key: string) =>
      store.setState(({ searches: { [key]: _, ...others } }) => ({ searches: others })),
  };
}

export const guessSearches = createGuessStore();
