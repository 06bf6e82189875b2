import type { Result } from '../../basics/result.ts';
import type { Track } from '../../marks/track.ts';
import type { ClipFailure } from '../../measurement/clip-measurement.ts';
import type { ClipViews } from '../../measurement/clip-views.ts';
import type { MeasureInput, MeasurementFailure } from '../../measurement/measurement.ts';

/** In a worker that is ended afterwards: it is asked once for a clip. */
export function clipViewsApart(
  input: MeasureInput,
  track: Track,
): Promise<Result<ClipViews, ClipFailure | MeasurementFailure>> {
  const worker = new Worker(new URL('./clip-views.worker.ts', import.meta.url), { type: 'module' });
  const answer = new Promise<Result<ClipViews, ClipFailure | MeasurementFailure>>((resolve, reject) => {
    worker.addEventListener('message', ({ data }) => resolve(data));
    worker.addEventListener('error', ({ message }) => reject(new Error(message)));
    worker.postMessage({ input, track });
  });
  return answer.finally(() => worker.terminate());
}
