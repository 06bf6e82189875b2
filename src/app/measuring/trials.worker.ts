/** Checks an uncertainty by trials: seconds of work, so in a worker that is ended when its answer is no longer wanted. */
import type { MeasureInput } from '../../measurement/measurement.ts';
import { trialsOf, USUAL_TRIALS } from '../../measurement/monte-carlo.ts';
import type { TrialsMessage } from './trials-store.ts';

/** Any number does: with the same one the same marks give the same answer again. */
const SEED = 1;

const tell = (message: TrialsMessage) => postMessage(message);

addEventListener('message', (event: MessageEvent<MeasureInput>) => {
  const onProgress = (done: number) => tell({ done });
  tell({ answer: trialsOf(event.data, { trials: USUAL_TRIALS, seed: SEED, onProgress }) });
});
