/** Starts the following worker, and ends it with the signal or when it is done. It may be made ready before: then it has compiled what it needs. */
import { fail, ok, type Result } from '../../basics/result.ts';
import type { FollowerFailure, FollowSaid, FollowTask } from './follow-task.ts';

let ready: Worker | null = null;

const newWorker = () => new Worker(new URL('./follow.worker.ts', import.meta.url), { type: 'module' });

/** For the next clip. */
export function makeFollowingReady(): void {
  ready ??= newWorker();
}

/** Rejects with the signal's reason when aborted. */
export function followClip(
  task: FollowTask,
  hear: (said: Extract<FollowSaid, { readonly is: 'begun' | 'seen' }>) => void,
  signal: AbortSignal,
): Promise<Result<null, FollowerFailure>> {
  const worker = ready ?? newWorker();
  ready = null;
  const answered = new Promise<Result<null, FollowerFailure>>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
    signal.throwIfAborted();
    worker.addEventListener('error', ({ message }) =>
      resolve(fail({ code: 'follow/broke-off', detail: message })),
    );
    worker.addEventListener('message', ({ data }: MessageEvent<FollowSaid>) => {
      if (data.is === 'done') resolve(ok(null));
      else if (data.is === 'failed') resolve(fail(data.failure));
      else hear(data);
    });
    worker.postMessage(task);
  });
  return answered.finally(() => worker.terminate());
}
