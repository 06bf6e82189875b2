/** Undo and redo: whole records, cheap because unchanged parts are shared. A drag is one step however many moves it has. */

export type History<T> = {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** What stood before the step that is under way, while a drag lasts. */
  readonly held: T | null;
};

/** Far more than anybody goes back; keeps memory bounded however long the work. */
const STEPS_KEPT = 500;

export function startHistory<T>(present: T): History<T> {
  return { past: [], present, future: [], held: null };
}

export function step<T>(history: History<T>, present: T): History<T> {
  if (present === history.present) return history;
  if (history.held !== null) return { ...history, present };
  return { past: kept([...history.past, history.present]), present, future: [], held: null };
}

export function beginDrag<T>(history: History<T>): History<T> {
  return history.held === null ? { ...history, held: history.present } : history;
}

export function endDrag<T>(history: History<T>): History<T> {
  const { held, past, present } = history;
  if (held === null) return history;
  if (held === present) return { ...history, held: null };
  return { past: kept([...past, held]), present, future: [], held: null };
}

/** The hand meant something else: all is as it was before the drag. */
export function cancelDrag<T>(history: History<T>): History<T> {
  return history.held === null ? history : { ...history, present: history.held, held: null };
}

export function undo<T>(history: History<T>): History<T> {
  const { past, present, future } = endDrag(history);
  const before = past.at(-1);
  if (before === undefined) return endDrag(history);
  return { past: past.slice(0, -1), present: before, future: [present, ...future], held: null };
}

export function redo<T>(history: History<T>): History<T> {
  const { past, present, future } = endDrag(history);
  const [next, ...later] = future;
  if (next === undefined) return endDrag(history);
  return { past: [...past, present], present: next, future: later, held: null };
}

/** What is so whatever is undone: every record that is kept is changed alike, and there is no step more. */
export function throughout<T>(
  { past, present, future, held }: History<T>,
  change: (one: T) => T,
): History<T> {
  return {
    past: past.map(change),
    present: change(present),
    future: future.map(change),
    held: held === null ? null : change(held),
  };
}

function kept<T>(past: readonly T[]): readonly T[] {
  return past.slice(-STEPS_KEPT);
}
