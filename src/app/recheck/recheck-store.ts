/** The package that is looked at, read-only: it never becomes the open record. */
import { createStore } from 'zustand/vanilla';
import type { Recheck } from '../../recheck/recheck.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';

export type RecheckState = {
  /** Null: no package is looked at. */
  readonly file: File | null;
  /** Null while it is rechecked. */
  readonly recheck: Recheck | null;
  readonly isBroken: boolean;
};

const NOTHING: RecheckState = { file: null, recheck: null, isBroken: false };

function createRecheckStore() {
  const store = createStore<RecheckState>(() => NOTHING);
  let control = new AbortController();
  const startWorker = () => new Worker(new URL('./recheck.worker.ts', import.meta.url), { type: 'module' });
  return {
    ...store,
    async open(file: File) {
      control.abort();
      control = new AbortController();
      store.setState({ ...NOTHING, file });
      try {
        const recheck = await askOnce<Blob, Recheck>(startWorker, file, control.signal);
        store.setState({ recheck });
      } catch (thrown) {
        if (store.getState().file === file) store.setState({ isBroken: true });
        reportUnlessAbort(thrown);
      }
    },
    close() {
      control.abort();
      store.setState(NOTHING);
    },
  };
}

export const recheck = createRecheckStore();
