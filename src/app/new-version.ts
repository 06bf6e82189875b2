/**
 * A newer build of the page that was fetched and waits. It is never swapped in under a person's hands: it comes when it is taken, or when
 * the page is opened after all its tabs were closed.
 */
import { registerSW } from 'virtual:pwa-register';
import { createStore } from 'zustand/vanilla';

type NewVersion = {
  /** Loads the page anew with it; null where there is none. */
  readonly take: (() => void) | null;
};

export const newVersion = createStore<NewVersion>(() => ({ take: null }));

export function keepForOffline(): void {
  const take = registerSW({
    immediate: true,
    onNeedRefresh: () => newVersion.setState({ take: () => void take() }),
    onRegisteredSW: (_, registration) => {
      // A page that is never closed, as one on a phone's home screen, would else not ask for a day.
      document.addEventListener('visibilitychange', () => {
        if (document.visibilityState === 'visible') registration?.update().catch(() => undefined);
      });
    },
  });
}
