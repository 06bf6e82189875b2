import type { Result } from '../../basics/result.ts';
import type { MeasureInput, Measurement, MeasurementFailure } from '../../measurement/measurement.ts';
import { type NewestOnly, newestOnly } from './newest-only.ts';

export type Measured = Result<Measurement, MeasurementFailure>;

let client: NewestOnly<MeasureInput, Measured> | null = null;

/** Answers with the measurement of the newest input; an input that a newer one has overtaken is not answered. */
export function measureApart(input: MeasureInput, answer: (measured: Measured) => void): void {
  client ??= startClient();
  client.ask(input, answer);
}

function startClient(): NewestOnly<MeasureInput, Measured> {
  const worker = new Worker(new URL('./measure.worker.ts', import.meta.url), { type: 'module' });
  const queue = newestOnly<MeasureInput, Measured>((input) => worker.postMessage(input));
  worker.addEventListener('message', (event: MessageEvent<Measured>) => queue.answered(event.data));
  // A mistake of ours inside it: the next input starts a new one, and the page's error report has the reason.
  worker.addEventListener('error', (event) => {
    worker.terminate();
    client = null;
    reportError(new Error(event.message));
  });
  return queue;
}
