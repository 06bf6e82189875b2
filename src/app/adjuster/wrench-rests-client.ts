import type { Result } from '../../basics/result.ts';
import type { WrenchClip, WrenchClipFailure } from '../../measurement/wrench-clip.ts';
import type { WrenchTrack } from './wrench-track.ts';

export type RestsQuestion = WrenchTrack & { readonly ticksPerSecond: number };

/** In a worker that is ended afterwards: it is asked once for a clip. */
export function wrenchRestsApart(question: RestsQuestion): Promise<Result<WrenchClip, WrenchClipFailure>> {
  const worker = new Worker(new URL('./wrench-rests.worker.ts', import.meta.url), { type: 'module' });
  const answer = new Promise<Result<WrenchClip, WrenchClipFailure>>((resolve, reject) => {
    worker.addEventListener('message', ({ data }) => resolve(data));
    worker.addEventListener('error', ({ message }) => reject(new Error(message)));
    worker.postMessage(question);
  });
  return answer.finally(() => worker.terminate());
}
