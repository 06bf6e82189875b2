import { useEffect } from 'react';
import { useStore } from 'zustand';
import { shallow } from 'zustand/shallow';
import type { Current } from '../work/current.ts';
import { createTrialsStore, type TrialsRun } from './trials-store.ts';
import { useMeasureInput } from './use-measure-input.ts';

/** More would wait for each other's memory on a telephone. */
const MOST_WORKERS = 4;

const trials = createTrialsStore(
  () => new Worker(new URL('./trials.worker.ts', import.meta.url), { type: 'module' }),
  Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1),
);

/** The check of the present input; one of an earlier input is dropped, and one that runs while this goes out of sight is stopped. */
export function useTrials(current: Current): {
  readonly run: TrialsRun | null;
  readonly begin: () => void;
  readonly stop: () => void;
} {
  const input = useMeasureInput(current);
  const last = useStore(trials, ({ run }) => run);
  const run = last && shallow(last.input, input) ? last : null;
  const outdated = last !== null && run === null;
  useEffect(() => {
    if (outdated) trials.drop();
  }, [outdated]);
  useEffect(
    () => () => {
      if (trials.getState().run?.answer === null) trials.drop();
    },
    [],
  );
  return { run, begin: () => trials.begin(input), stop: trials.drop };
}
