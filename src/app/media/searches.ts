/** What is looked for in pictures while the page is open, and how it ended, by a key that names what was asked. */
import { createStore } from 'zustand/vanilla';
import { reportUnlessAbort } from './report-unless-abort.ts';

export type UnderWay = { readonly is: 'under-way' };

type State<Ended> = { readonly searches: Readonly<Record<string, UnderWay | Ended>> };

/** mostKept: what was asked about earlier places of marks goes first. */
export function createSearches<Ended extends { readonly is: string }>(mostKept = Number.POSITIVE_INFINITY) {
  const store = createStore<State<Ended>>(() => ({ searches: {} }));
  const set = (key: string, search: UnderWay | Ended) =>
    store.setState(({ searches: { [key]: _, ...others } }) => ({
      searches: Object.fromEntries([...Object.entries(others).slice(1 - mostKept), [key, search]]),
    }));
  const forget = (keys: readonly string[]) =>
    store.setState(({ searches }) => ({
      searches: Object.fromEntries(Object.entries(searches).filter(([key]) => !keys.includes(key))),
    }));
  return {
    ...store,
    /** Looked for again by whoever looks for what has not been looked for. */
    forget,
    /** Answers how to call it off: it may be begun again then. */
    begin: (key: string, seek: (signal: AbortSignal) => Promise<Ended>): (() => void) => {
      const control = new AbortController();
      set(key, { is: 'under-way' });
      seek(control.signal).then((ended) => {
        if (!control.signal.aborted) set(key, ended);
      }, reportUnlessAbort);
      return () => {
        control.abort();
        if (store.getState().searches[key]?.is === 'under-way') forget([key]);
      };
    },
  };
}
