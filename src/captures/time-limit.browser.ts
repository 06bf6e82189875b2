/** A decoder may never answer: every wait for one has an end. Abort rejects with the signal's reason. */
export class TimeLimitError extends Error {
  readonly limitS: number;
  constructor(limitS: number) {
    super(`No answer within ${limitS} s`);
    this.limitS = limitS;
  }
}

export async function withinTime<T>(work: Promise<T>, limitS: number, signal: AbortSignal): Promise<T> {
  signal.throwIfAborted();
  let stop: () => void = () => {};
  const ended = new Promise<never>((_, reject) => {
    const timer = setTimeout(() => reject(new TimeLimitError(limitS)), limitS * 1000);
    const abort = () => reject(signal.reason);
    signal.addEventListener('abort', abort, { once: true });
    stop = () => {
      clearTimeout(timer);
      signal.removeEventListener('abort', abort);
    };
  });
  try {
    return await Promise.race([work, ended]);
  } finally {
    stop();
  }
}

/** What an ended request rejects with, ours or the platform's, or the clip reader's once its file was closed: neither a failure nor an error. */
export function isAbort(reason: unknown): boolean {
  return reason instanceof Error && (reason.name === 'AbortError' || reason.name === 'InputDisposedError');
}
