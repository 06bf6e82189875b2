/** Runs in a worker of the page: what it is sent is timed there, or its share of the trials is made. */
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { drawnTrials } from '../../src/measurement/monte-carlo.ts';
import { timingOf } from './engine-timing.ts';

export type TimingTask = { readonly inputs: readonly MeasureInput[]; readonly repeats: number };
export type TrialsTask = { readonly input: MeasureInput; readonly from: number; readonly to: number };

addEventListener('message', ({ data }: MessageEvent<TimingTask | TrialsTask>) => {
  postMessage(
    'inputs' in data
      ? timingOf(data.inputs, data.repeats, () => performance.now())
      : drawnTrials(data.input, { from: data.from, to: data.to, seed: 1 }).ok,
  );
});
