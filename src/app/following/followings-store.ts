/** What is under way in following a clip, by its key, and why it came to nothing. What came of it is in the record. */
import { createStore } from 'zustand/vanilla';
import type { MeasurementFailure } from '../../measurement/measurement.ts';
import type { WrenchClipFailure } from '../../measurement/wrench-clip.ts';
import type { FollowerFailure } from './follow-task.ts';

export type FollowingFailure = FollowerFailure | WrenchClipFailure | MeasurementFailure;

export type Following =
  | {
      readonly is: 'under-way';
      readonly control: AbortController;
      /** Frames followed, and of how many; null until the clip is open. */
      readonly done: number;
      readonly of: number | null;
      /** Time left by what was done since it began or went on, s. */
      readonly leftS: number | null;
    }
  | { readonly is: 'measuring' }
  | { readonly is: 'stopped'; readonly done: number; readonly of: number }
  | { readonly is: 'failed'; readonly failure: FollowingFailure };

type State = { readonly followings: Readonly<Record<string, Following>> };

function createFollowingsStore() {
  const store = createStore<State>(() => ({ followings: {} }));
  return {
    ...store,
    set: (key: string, following: Following) =>
      store.setState(({ followings }) => ({ followings: { ...followings, [key]: following } })),
    forget: (key: string) =>
      store.setState(({ followings: { [key]: _, ...others } }) => ({ followings: others })),
  };
}

export const followings = createFollowingsStore();
