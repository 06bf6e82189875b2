/** Makes some of the trials: seconds of work, so in a worker that is ended when its answer is no longer wanted. */
import { drawnTrials } from '../../measurement/monte-carlo.ts';
import type { TrialsMessage, TrialsShare } from './trials-store.ts';

/** Any number does: with the same one the same marks give the same answer again. */
const SEED = 1;

const tell = (message: TrialsMessage) => postMessage(message);

addEventListener('message', ({ data: { input, from, to } }: MessageEvent<TrialsShare>) => {
  const onProgress = (done: number) => tell({ done });
  tell({ drawn: drawnTrials(input, { from, to, seed: SEED, onProgress }) });
});
