/**
 * Saves what changes, at once and one save at a time: while a save runs, later changes wait and only the newest of each
 * kept thing is written. No delay, so that closing the page just after a tap loses nothing.
 */
export type Autosave<T> = {
  /** Takes note of the newest state and starts a save unless one is running. */
  readonly changed: (state: T) => void;
  /** What is noted and not yet written, oldest first. */
  readonly unwritten: () => readonly T[];
  /** Resolves when everything noted is written. */
  readonly settled: () => Promise<void>;
};

export function createAutosave<T>(
  keyOf: (state: T) => string,
  save: (state: T) => Promise<void>,
): Autosave<T> {
  const waiting = new Map<string, T>();
  let writing: readonly T[] = [];
  let running: Promise<void> | null = null;

  async function run() {
    for (;;) {
      const [next] = waiting;
      if (!next) break;
      const [key, state] = next;
      waiting.delete(key);
      writing = [state];
      await save(state);
      writing = [];
    }
    running = null;
  }

  return {
    changed(state) {
      const key = keyOf(state);
      // Anew at the end: what was open last is written last.
      waiting.delete(key);
      waiting.set(key, state);
      running ??= run();
    },
    unwritten: () => [...writing, ...waiting.values()],
    settled: () => running ?? Promise.resolve(),
  };
}
