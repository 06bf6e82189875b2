/** The check by trials that runs or has run: one at a time, its trials shared out among workers, which stopping it ends. */
import { createStore } from 'zustand/vanilla';
import type { Result } from '../../basics/result.ts';
import type { MeasureInput, MeasurementFailure } from '../../measurement/measurement.ts';
import {
  type DrawnTrials,
  joinedTrials,
  type Trials,
  type TrialsFailure,
  USUAL_TRIALS,
} from '../../measurement/monte-carlo-joined.ts';

export type TrialsAnswer = Result<Trials, TrialsFailure>;
/** Trials from .. to of the input are asked of a worker. */
export type TrialsShare = { readonly input: MeasureInput; readonly from: number; readonly to: number };
export type TrialsMessage =
  | { readonly done: number }
  | { readonly drawn: Result<DrawnTrials, MeasurementFailure> };

export type TrialsRun = {
  readonly input: MeasureInput;
  /** Trials made so far. */
  readonly done: number;
  readonly answer: TrialsAnswer | null;
};

export function createTrialsStore(startWorker: () => Worker, workerCount: number) {
  const store = createStore<{ readonly run: TrialsRun | null }>(() => ({ run: null }));
  let workers: readonly Worker[] = [];

  function endWorkers() {
    for (const worker of workers) worker.terminate();
    workers = [];
  }
  function drop() {
    endWorkers();
    store.setState({ run: null });
  }
  function begin(input: MeasureInput) {
    endWorkers();
    store.setState({ run: { input, done: 0, answer: null } });
    const done = new Array<number>(workerCount).fill(0);
    const parts: Result<DrawnTrials, MeasurementFailure>[] = [];
    const set = (change: Partial<TrialsRun>) =>
      store.setState(({ run }) => ({ run: run && { ...run, ...change } }));
    workers = done.map(() => startWorker());
    for (const [i, worker] of workers.entries()) {
      worker.addEventListener('message', ({ data }: MessageEvent<TrialsMessage>) => {
        if ('done' in data) {
          done[i] = data.done;
          set({ done: done.reduce((sum, one) => sum + one, 0) });
          return;
        }
        parts[i] = data.drawn;
        // What cannot be measured fails in every share alike.
        if (data.drawn.ok && Object.keys(parts).length < workerCount) return;
        endWorkers();
        set({ answer: joinedTrials(data.drawn.ok ? parts : [data.drawn]) });
      });
      worker.addEventListener('error', (event) => {
        drop();
        reportError(new Error(event.message));
      });
      worker.postMessage({ input, from: shareEnd(i), to: shareEnd(i + 1) } satisfies TrialsShare);
    }
  }
  const shareEnd = (i: number): number => Math.round((i * USUAL_TRIALS) / workerCount);
  return { ...store, begin, drop };
}
