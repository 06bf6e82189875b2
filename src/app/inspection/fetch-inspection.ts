/** The inspection's screen, fetched when it is gone to, or before that where it will be. */
import { measuredAll } from '../stores.ts';
import type { InspectionScreen } from './InspectionScreen.tsx';

let fetched: typeof InspectionScreen | null = null;

export async function fetchInspection() {
  fetched = (await import('./InspectionScreen.tsx')).InspectionScreen;
  return { default: fetched };
}

/** Null where it was not fetched yet. React shows what it must wait for, if only for a moment, 300 ms late. */
export const fetchedInspection = () => fetched;

/** While nothing else is to be done: the first inspection of a list opens as quickly as the others. Answers how to call it off. */
export function fetchInspectionWhenIdle(): () => void {
  const fetchAll = () => {
    // Where this fails it is asked for again when it is gone to, and told there.
    fetchInspection().catch(() => undefined);
    measuredAll.warm();
  };
  // Safari has no idle time to ask for.
  if (!('requestIdleCallback' in window)) {
    const timer = setTimeout(fetchAll, 500);
    return () => clearTimeout(timer);
  }
  const asked = requestIdleCallback(fetchAll, { timeout: 2000 });
  return () => cancelIdleCallback(asked);
}
