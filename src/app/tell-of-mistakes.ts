import { isAbort } from '../captures/time-limit.browser.ts';
import { notices } from './stores.ts';
import { CRASH } from './words/en.ts';

/** A mistake of ours outside a screen's drawing breaks no screen: it is told, and the record can be saved. */
export function tellOfMistakes(): void {
  const tell = (thrown: unknown) => {
    // Without an error object it is the browser's own remark, not a mistake of the program.
    if (thrown && !isAbort(thrown)) notices.tell('mistake', CRASH.went);
  };
  addEventListener('error', (event) => tell(event.error));
  addEventListener('unhandledrejection', (event) => tell(event.reason));
}
