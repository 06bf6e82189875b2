/** What the person should know now: in sentences. One per topic: a newer replaces it. */
import { createStore } from 'zustand/vanilla';

export type Notice = {
  readonly topic: string;
  readonly text: string;
  /** The file it speaks of, if it does. */
  readonly fileName: string | null;
};

export function createNotices() {
  const store = createStore<{ readonly list: readonly Notice[] }>(() => ({ list: [] }));
  const clear = (topic: string) => {
    if (!store.getState().list.some((notice) => notice.topic === topic)) return;
    store.setState(({ list }) => ({ list: list.filter((notice) => notice.topic !== topic) }));
  };
  return {
    ...store,
    clear,
    tell(topic: string, text: string, fileName: string | null = null) {
      const others = store.getState().list.filter((notice) => notice.topic !== topic);
      store.setState({ list: [...others, { topic, text, fileName }] });
    },
  };
}
