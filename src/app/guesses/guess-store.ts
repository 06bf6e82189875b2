/** What was proposed on each picture before anything was marked there. Nothing of it is in the record before the person takes it. */
import { createStore } from 'zustand/vanilla';
import type { View } from '../../marks/view.ts';
import type { GuessQuestion, Proposal } from '../../vision/guess-sight.ts';
import { pictureKey } from '../target/target-store.ts';

export type GuessLook =
  | { readonly is: 'under-way' }
  | { readonly is: 'done'; readonly proposals: readonly Proposal[] }
  /** The search did not start or end; the person marks by hand as ever. */
  | { readonly is: 'failed' };

export const guessKey = (view: View, question: GuessQuestion) =>
  `${pictureKey(view)} ${JSON.stringify(question)}`;

const MOST_KEPT = 12;

function createGuessStore() {
  const store = createStore<{ readonly looks: Readonly<Record<string, GuessLook>> }>(() => ({ looks: {} }));
  return {
    ...store,
    set: (key: string, look: GuessLook) =>
      store.setState(({ looks: { [key]: _, ...others } }) => ({
        looks: Object.fromEntries([...Object.entries(others).slice(1 - MOST_KEPT), [key, look]]),
      })),
    forget: (key: string) => store.setState(({ looks: { [key]: _, ...others } }) => ({ looks: others })),
  };
}

export const guessLooks = createGuessStore();
