/** The files behind the captures of the open record. What is not here is asked for; the record itself does not need it. */
import { createStore } from 'zustand/vanilla';

export type MediaState = {
  /** By the capture's SHA-256. Null: looked for on this device and not there. */
  readonly files: Readonly<Record<string, Blob | null>>;
  /** Files being read now. */
  readonly reading: number;
};

export function createMediaStore() {
  const store = createStore<MediaState>(() => ({ files: {}, reading: 0 }));
  return {
    ...store,
    put: (sha256: string, file: Blob | null) =>
      store.setState(({ files }) => ({ files: { ...files, [sha256]: file } })),
    async whileReading<T>(task: () => Promise<T>): Promise<T> {
      store.setState(({ reading }) => ({ reading: reading + 1 }));
      try {
        return await task();
      } finally {
        store.setState(({ reading }) => ({ reading: reading - 1 }));
      }
    },
  };
}
