import type { BandColour } from '../../finding/over-stroke-mark.ts';
import { endedBy } from '../../vision/ended-by.browser.ts';
import type { PaintJudgement } from '../../vision/paint-judge.ts';
import type { PaintFrame } from './paint-frames.ts';

export type PaintAsked = { readonly frames: readonly PaintFrame[]; readonly bandColour: BandColour | null };

let worker: Worker | null = null;

/** One after the other. The pictures are handed over. Rejects with an AbortError where the signal ends it. */
export async function judgeApart(asked: PaintAsked, signal: AbortSignal): Promise<PaintJudgement> {
  worker ??= new Worker(new URL('./paint.worker.ts', import.meta.url), { type: 'module' });
  const at = worker;
  const answer = new Promise<PaintJudgement>((resolve, reject) => {
    at.addEventListener('message', ({ data }: MessageEvent<PaintJudgement>) => resolve(data), {
      once: true,
    });
    at.addEventListener('error', ({ message }) => reject(new Error(`Paint worker: ${message}`)), {
      once: true,
    });
  });
  at.postMessage(
    asked,
    asked.frames.map(({ picture }) => picture),
  );
  try {
    return await endedBy(answer, [signal]);
  } catch (thrown) {
    // It may be at work still, or broken: the next question gets another.
    at.terminate();
    if (worker === at) worker = null;
    throw thrown;
  }
}
