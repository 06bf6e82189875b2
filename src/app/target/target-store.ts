/** What is under way in looking for the printed target, and how it ended where it found nothing. What was found is marks. */
import { createStore } from 'zustand/vanilla';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameFailure } from '../../frames/frame-failure.ts';
import type { View } from '../../marks/view.ts';
import type { VisionFailure } from '../../vision/vision-failure.ts';

export type SearchFailure = VisionFailure | CaptureFailure | FrameFailure;

export type Search =
  | { readonly is: 'under-way' }
  /** `missing`: markers that were not found; all of them where there is no target. */
  | { readonly is: 'done'; readonly missing: readonly number[] }
  | { readonly is: 'failed'; readonly failure: SearchFailure };

/** Names the picture, whatever state it is taken for. */
export const pictureKey = ({ captureId, frame }: Pick<View, 'captureId' | 'frame'>) =>
  `${captureId} ${frame?.timeTicks ?? 'photo'}`;

export function createTargetStore() {
  const store = createStore<{ readonly searches: Readonly<Record<string, Search>> }>(() => ({
    searches: {},
  }));
  return {
    ...store,
    set: (key: string, search: Search) =>
      store.setState(({ searches }) => ({ searches: { ...searches, [key]: search } })),
    /** Looked for again by whoever looks for what has not been looked for. */
    forget: (keys: readonly string[]) =>
      store.setState(({ searches }) => ({
        searches: Object.fromEntries(Object.entries(searches).filter(([key]) => !keys.includes(key))),
      })),
  };
}

export const targetSearches = createTargetStore();
