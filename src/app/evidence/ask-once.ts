import { askApart } from '../report/ask-apart.browser.ts';

/** One question to a worker of its own. Rejects with the signal's reason when aborted. */
export async function askOnce<Q, A>(start: () => Worker, question: Q, signal: AbortSignal): Promise<A> {
  const [answer] = await askApart<Q, A>(start, [question], { signal });
  return answer as A;
}
