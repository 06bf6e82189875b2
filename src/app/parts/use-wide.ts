import { useSyncExternalStore } from 'react';

/** From here on two pictures and the title block stand side by side. */
const WIDE = '(min-width: 1000px)';

export function useWide(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const query = matchMedia(WIDE);
      query.addEventListener('change', changed);
      return () => query.removeEventListener('change', changed);
    },
    () => matchMedia(WIDE).matches,
  );
}
