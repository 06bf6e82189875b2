/** What is under way in looking for tie points, and why none were found. What was found is marks. */
import { createStore } from 'zustand/vanilla';
import type { View } from '../../marks/view.ts';
import type { TieFailure } from '../../vision/tie-sight.ts';
import { pictureKey } from '../media/asked-picture.ts';
import type { PictureFailure } from '../media/picture-of.ts';

export type TieSearchFailure = TieFailure | PictureFailure;

export type TieSearch =
  | { readonly is: 'under-way'; readonly control: AbortController }
  | { readonly is: 'failed'; readonly failure: TieSearchFailure };

/** Names two pictures. */
export const pairKey = (first: View, second: View) => `${pictureKey(first)} ${pictureKey(second)}`;

function createTiesStore() {
  const store = createStore<{ readonly searches: Readonly<Record<string, TieSearch>> }>(() => ({
    searches: {},
  }));
  return {
    ...store,
    set: (key: string, search: TieSearch) =>
      store.setState(({ searches }) => ({ searches: { ...searches, [key]: search } })),
    forget: (key: string) =>
      store.setState(({ searches: { [key]: _, ...others } }) => ({ searches: others })),
  };
}

export const tieSearches = createTiesStore();
