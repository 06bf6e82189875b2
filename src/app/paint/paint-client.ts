import { endedBy } from '../../vision/ended-by.browser.ts';
import type { PaintJudgement } from '../../vision/paint-judge.ts';
import type { PaintFrame } from './paint-frames.ts';

let worker: Worker | null = null;

/** One after the other. The pictures are handed over. Rejects with an AbortError where the signal ends it. */
export async function judgeApart(
  frames: readonly PaintFrame[],
  signal: AbortSignal,
): Promise<PaintJudgement> {
  worker ??= new Worker(new URL('./paint.worker.ts', import.meta.url), { type: 'module' });
  const asked = worker;
  const answer = new Promise<PaintJudgement>((resolve, reject) => {
    asked.addEventListener('message', ({ data }: MessageEvent<PaintJudgement>) => resolve(data), {
      once: true,
    });
    asked.addEventListener('error', ({ message }) => reject(new Error(`Paint worker: ${message}`)), {
      once: true,
    });
  });
  asked.postMessage(
    frames,
    frames.map(({ picture }) => picture),
  );
  try {
    return await endedBy(answer, [signal]);
  } catch (thrown) {
    // It may be at work still, or broken: the next question gets another.
    asked.terminate();
    if (worker === asked) worker = null;
    throw thrown;
  }
}
