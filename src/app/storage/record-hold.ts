/**
 * An inspection is worked on in one tab at a time: two would each write over what the other kept. The tab that has it open holds
 * a lock on it (a tab that is closed or crashes lets go by itself). Another that wants it asks; the holder then writes what it
 * has, closes it and lets go.
 */
const CHANNEL = 'strokewitness-asks';
const lockOf = (keptId: string) => `strokewitness-record-${keptId}`;

/** A page that is loaded again may be there before the one that it was has let go. */
const OWN_PAGE_GOES_MS = 300;
/** A tab that does not answer by then sleeps or hangs: what it has was written long ago. */
const ANSWER_MS = 3000;

export type RecordHold = {
  /** False where another tab has it. */
  readonly ifFree: (keptId: string) => Promise<boolean>;
  /** Takes it from the tab that has it, once that has written all it holds. */
  readonly fromOthers: (keptId: string) => Promise<void>;
  /** This one and no other. */
  readonly only: (keptId: string | null) => Promise<void>;
};

/** `close` is told of a record that another tab takes, and resolves when it is closed here and written. */
export function createRecordHold(close: (keptId: string) => Promise<void>): RecordHold {
  const held = new Map<string, () => void>();
  const letGo = (keptId: string) => {
    held.get(keptId)?.();
    held.delete(keptId);
  };

  const channel = new BroadcastChannel(CHANNEL);
  channel.onmessage = async ({ data: keptId }: MessageEvent<string>) => {
    if (!held.has(keptId)) return;
    await close(keptId);
    letGo(keptId);
  };

  function take(keptId: string, options: LockOptions): Promise<boolean> {
    if (held.has(keptId)) return Promise.resolve(true);
    return new Promise((answer) => {
      const untilLetGo = (lock: Lock | null) => {
        answer(lock !== null);
        return lock ? new Promise<void>((release) => held.set(keptId, release)) : undefined;
      };
      navigator.locks.request(lockOf(keptId), options, untilLetGo).catch(() => {
        // It did not come in time, or it was taken while this tab slept.
        answer(false);
        if (held.delete(keptId)) void close(keptId);
      });
    });
  }
  const soon = (keptId: string, ms: number) => take(keptId, { signal: AbortSignal.timeout(ms) });

  return {
    ifFree: (keptId) => soon(keptId, OWN_PAGE_GOES_MS),
    async fromOthers(keptId) {
      if (await take(keptId, { ifAvailable: true })) return;
      channel.postMessage(keptId);
      if (!(await soon(keptId, ANSWER_MS))) await take(keptId, { steal: true });
    },
    async only(keptId) {
      for (const other of held.keys()) if (other !== keptId) letGo(other);
      if (keptId !== null) await take(keptId, { ifAvailable: true });
    },
  };
}
