/** Runs in a worker of the page: what it is sent is timed there. */
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { timingOf } from './engine-timing.ts';

export type TimingTask = { readonly inputs: readonly MeasureInput[]; readonly repeats: number };

addEventListener('message', ({ data }: MessageEvent<TimingTask>) => {
  postMessage(timingOf(data.inputs, data.repeats, () => performance.now()));
});
