/** The package that is looked at, read-only: it never becomes the open record. */
import { createStore } from 'zustand/vanilla';
import type { Recheck } from '../../recheck/recheck.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import type { RecheckQuestion } from './recheck.worker.ts';

export type RecheckState = {
  /** Null: no package is looked at. */
  readonly file: File | null;
  /** Null while it is rechecked. */
  readonly recheck: Recheck | null;
  readonly isBroken: boolean;
  /** Its name where it was given a time stamp here and saved. */
  readonly savedAs: string | null;
};

const NOTHING: RecheckState = { file: null, recheck: null, isBroken: false, savedAs: null };

export function createRecheckStore(startWorker: () => Worker) {
  const store = createStore<RecheckState>(() => NOTHING);
  let control = new AbortController();
  const look = async (question: RecheckQuestion): Promise<void> => {
    control.abort();
    control = new AbortController();
    const { signal } = control;
    try {
      const recheck = await askOnce<RecheckQuestion, Recheck>(startWorker, question, signal);
      store.setState({ recheck, isBroken: false });
    } catch (thrown) {
      if (!signal.aborted) store.setState({ isBroken: true });
      reportUnlessAbort(thrown);
    }
  };
  return {
    ...store,
    open(file: File, savedAs: string | null = null): Promise<void> {
      store.setState({ ...NOTHING, file, savedAs });
      return look({ file, timeRoots: [] });
    },
    /** Once more, with these roots for its time stamp; what was found stays in sight meanwhile. */
    async trust(timeRoots: readonly Uint8Array[]): Promise<void> {
      const { file } = store.getState();
      if (file) await look({ file, timeRoots });
    },
    close() {
      control.abort();
      store.setState(NOTHING);
    },
  };
}

export const recheck = createRecheckStore(
  () => new Worker(new URL('./recheck.worker.ts', import.meta.url), { type: 'module' }),
);
