/** What the decoding worker says, one after the other, when it is asked for. */
import { brokeOff } from './follow-task.ts';
import type { GrayAsked, GraySaid, GrayTask } from './gray-task.ts';

export type DecodedGrays = {
  /** A frame's values are gone with the next. */
  next(): Promise<GraySaid>;
  close(): void;
};

/** It decodes ahead of what is asked. */
export function decodedGrays(task: GrayTask): DecodedGrays {
  const worker = new Worker(new URL('./gray.worker.ts', import.meta.url), { type: 'module' });
  const ask = (asked: GrayAsked, handedOver: Transferable[] = []) => worker.postMessage(asked, handedOver);
  const said: GraySaid[] = [];
  let heard = () => {};
  const hear = (one: GraySaid) => {
    said.push(one);
    heard();
  };
  worker.addEventListener('message', ({ data }: MessageEvent<GraySaid>) => hear(data));
  worker.addEventListener('error', ({ message }) => hear({ is: 'failed', failure: brokeOff(message) }));
  ask({ is: 'task', task });
  // With a second view of these bytes Chromium, when they are handed over, drops all that it has compiled for arrays (its --trace-deopt).
  let lookedAt: ArrayBuffer | null = null;
  return {
    async next() {
      if (lookedAt) ask({ is: 'seen', bytes: lookedAt }, [lookedAt]);
      lookedAt = null;
      for (;;) {
        const next = said.shift();
        if (next?.is === 'frame') lookedAt = next.frame.gray.values.buffer as ArrayBuffer;
        if (next) return next;
        await new Promise<void>((resolve) => {
          heard = resolve;
        });
      }
    },
    close: () => worker.terminate(),
  };
}
