/** A wait that ends when one of its signals does. WebAssembly cannot be interrupted: who waits ends the worker as well. */
export async function endedBy<T>(work: Promise<T>, signals: readonly AbortSignal[]): Promise<T> {
  for (const signal of signals) signal.throwIfAborted();
  let stop: () => void = () => {};
  const ended = new Promise<never>((_, reject) => {
    const end = () => reject(signals.find(({ aborted }) => aborted)?.reason);
    for (const signal of signals) signal.addEventListener('abort', end);
    stop = () => {
      for (const signal of signals) signal.removeEventListener('abort', end);
    };
  });
  try {
    return await Promise.race([work, ended]);
  } finally {
    stop();
  }
}
