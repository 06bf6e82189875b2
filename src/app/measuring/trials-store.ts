/** The check by trials that runs or has run: one at a time, each in a worker of its own, which stopping it ends. */
import { createStore } from 'zustand/vanilla';
import type { Result } from '../../basics/result.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';
import type { Trials, TrialsFailure } from '../../measurement/monte-carlo.ts';

export type TrialsAnswer = Result<Trials, TrialsFailure>;
export type TrialsMessage = { readonly done: number } | { readonly answer: TrialsAnswer };

export type TrialsRun = {
  readonly input: MeasureInput;
  /** Trials made so far. */
  readonly done: number;
  readonly answer: TrialsAnswer | null;
};

export function createTrialsStore(startWorker: () => Worker) {
  const store = createStore<{ readonly run: TrialsRun | null }>(() => ({ run: null }));
  let worker: Worker | null = null;

  function endWorker() {
    worker?.terminate();
    worker = null;
  }
  function drop() {
    endWorker();
    store.setState({ run: null });
  }
  function begin(input: MeasureInput) {
    endWorker();
    store.setState({ run: { input, done: 0, answer: null } });
    worker = startWorker();
    worker.addEventListener('message', ({ data }: MessageEvent<TrialsMessage>) => {
      if ('answer' in data) endWorker();
      store.setState(({ run }) => ({ run: run && { ...run, ...data } }));
    });
    worker.addEventListener('error', (event) => {
      drop();
      reportError(new Error(event.message));
    });
    worker.postMessage(input);
  }
  return { ...store, begin, drop };
}
