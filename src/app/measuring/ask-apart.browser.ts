/** Puts questions to a worker of its own, one after the other, and ends it. Rejects with the signal's reason when aborted. */
export async function askApart<Q, A>(
  start: () => Worker,
  questions: readonly Q[],
  { signal, onProgress }: { signal: AbortSignal; onProgress?: (done: number, of: number) => void },
): Promise<readonly A[]> {
  signal.throwIfAborted();
  if (questions.length === 0) return [];
  const worker = start();
  const answers: A[] = [];
  try {
    for (const question of questions) {
      answers.push(await answerOf<Q, A>(worker, question, signal));
      onProgress?.(answers.length, questions.length);
    }
    return answers;
  } finally {
    worker.terminate();
  }
}

/** One question to a worker of its own. Rejects with the signal's reason when aborted. */
export async function askOnce<Q, A>(start: () => Worker, question: Q, signal: AbortSignal): Promise<A> {
  const [answer] = await askApart<Q, A>(start, [question], { signal });
  return answer as A;
}

function answerOf<Q, A>(worker: Worker, question: Q, signal: AbortSignal): Promise<A> {
  return new Promise((resolve, reject) => {
    const heard = new AbortController();
    const once = { once: true, signal: heard.signal };
    const end = (settle: () => void) => {
      heard.abort();
      settle();
    };
    worker.addEventListener('message', ({ data }: MessageEvent<A>) => end(() => resolve(data)), once);
    worker.addEventListener('error', ({ message }) => end(() => reject(new Error(message))), once);
    signal.addEventListener('abort', () => end(() => reject(signal.reason)), once);
    worker.postMessage(question);
  });
}
