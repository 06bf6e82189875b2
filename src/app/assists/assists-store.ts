/** What assists found near marks of the hand, by picture and question. Nothing of it is in the record before the person takes it. */
import { createStore } from 'zustand/vanilla';
import type { CaptureFailure } from '../../captures/capture-failure.ts';
import type { FrameFailure } from '../../frames/frame-failure.ts';
import type { View } from '../../marks/view.ts';
import type { AssistFailure, AssistQuestion, FoundMark } from '../../vision/assist-sight.ts';
import { pictureKey } from '../target/target-store.ts';

export type AssistSearchFailure = AssistFailure | CaptureFailure | FrameFailure;

export type AssistSearch =
  | { readonly is: 'under-way' }
  | { readonly is: 'found'; readonly marks: readonly FoundMark[] }
  | { readonly is: 'failed'; readonly failure: AssistSearchFailure };

export const assistKey = (view: View, question: AssistQuestion) =>
  `${pictureKey(view)} ${JSON.stringify(question)}`;

/** Far more than a picture has; what was asked about earlier places of a mark goes first. */
const MOST_KEPT = 40;

function createAssistsStore() {
  const store = createStore<{ readonly searches: Readonly<Record<string, AssistSearch>> }>(() => ({
    searches: {},
  }));
  return {
    ...store,
    set: (key: string, search: AssistSearch) =>
      store.setState(({ searches: { [key]: _, ...others } }) => ({
        searches: Object.fromEntries([...Object.entries(others).slice(1 - MOST_KEPT), [key, search]]),
      })),
    forget: (key: string) =>
      store.setState(({ searches: { [key]: _, ...others } }) => ({ searches: others })),
  };
}

export const assistSearches = createAssistsStore();
