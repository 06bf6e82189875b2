/** What is under way in looking for tie points, and why none were found. What was found is marks. */
import { createStore } from 'zustand/vanilla';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameFailure } from '../../frames/frame-failure.ts';
import type { View } from '../../marks/view.ts';
import type { TieFailure } from '../../vision/tie-sight.ts';
import { pictureKey } from '../target/target-store.ts';

export type TieSearchFailure = TieFailure | CaptureFailure | FrameFailure;

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
