/** One question to a worker of its own, which ends with the answer. Rejects with the signal's reason when aborted. */
export function askOnce<Q, A>(start: () => Worker, question: Q, signal: AbortSignal): Promise<A> {
  return new Promise((resolve, reject) => {
    if (signal.aborted) return reject(signal.reason);
    const worker = start();
    const end = (settle: () => void) => {
      worker.terminate();
      signal.removeEventListener('abort', aborted);
      settle();
    };
    const aborted = () => end(() => reject(signal.reason));
    signal.addEventListener('abort', aborted);
    worker.addEventListener('message', ({ data }: MessageEvent<A>) => end(() => resolve(data)));
    worker.addEventListener('error', ({ message }) => end(() => reject(new Error(message))));
    worker.postMessage(question);
  });
}
