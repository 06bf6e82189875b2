import { isAbort } from '../../captures/time-limit.browser.ts';

/** An abort is neither failure nor error; anything else is a mistake of ours. */
export function reportUnlessAbort(thrown: unknown): void {
  if (!isAbort(thrown)) reportError(thrown);
}
