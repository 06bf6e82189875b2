/** What part of a picture the person asked to see close, by picture; each asking is a list of its own. */
import { createStore } from 'zustand/vanilla';
import type { FramePoint } from '../viewer/view-transform.ts';

type State = { readonly close: Readonly<Record<string, readonly FramePoint[]>> };

const store = createStore<State>(() => ({ close: {} }));

export const broughtClose = {
  ...store,
  bring: (key: string, points: readonly FramePoint[]) =>
    store.setState(({ close }) => ({ close: { ...close, [key]: [...points] } })),
};
