/** What waits until the cautions were read on this device: all of it goes on then, none of it when they are left unread. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Choices } from './storage/choices.ts';

type Go = () => void;

export function createCautionsFirst(choices: StoreApi<Choices>) {
  const store = createStore<{ readonly waiting: readonly Go[] }>(() => ({ waiting: [] }));
  return {
    ...store,
    before(go: Go): void {
      if (choices.getState().cautionsRead) go();
      else store.setState(({ waiting }) => ({ waiting: [...waiting, go] }));
    },
    closed(read: boolean): void {
      const { waiting } = store.getState();
      store.setState({ waiting: [] });
      if (!read) return;
      choices.setState({ cautionsRead: true });
      for (const go of waiting) go();
    },
  };
}
