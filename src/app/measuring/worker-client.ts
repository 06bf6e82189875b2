import { type NewestOnly, newestOnly } from './newest-only.ts';

/** One worker for one kind of question, started on the first; an input that a newer one has overtaken is not answered. */
export function workerClient<I, O>(start: () => Worker): (input: I, answer: (output: O) => void) => void {
  let client: NewestOnly<I, O> | null = null;

  function startClient(): NewestOnly<I, O> {
    const worker = start();
    const queue = newestOnly<I, O>((input) => worker.postMessage(input));
    worker.addEventListener('message', (event: MessageEvent<O>) => queue.answered(event.data));
    // A mistake of ours inside it: the next input starts a new one, and the page's error report has the reason.
    worker.addEventListener('error', (event) => {
      worker.terminate();
      client = null;
      reportError(new Error(event.message));
    });
    return queue;
  }

  return (input, answer) => {
    client ??= startClient();
    client.ask(input, answer);
  };
}
