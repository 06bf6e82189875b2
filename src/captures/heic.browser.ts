/** HEIC where the browser has no decoder of its own: libheif in a worker that lives for one picture. */
import type { HeicAnswer } from './heic-worker.browser.ts';
import { withinTime } from './time-limit.browser.ts';

/** 2 s for 12 megapixels on a desktop; a phone with a larger picture may need ten times that. */
const DECODE_LIMIT_S = 60;

/** Null: libheif makes no picture of it either. The caller closes what it gets. */
export async function decodeHeic(bytes: ArrayBuffer, signal: AbortSignal): Promise<HeicAnswer> {
  const worker = new Worker(new URL('./heic-worker.browser.ts', import.meta.url), { type: 'module' });
  try {
    const answer = new Promise<HeicAnswer>((resolve, reject) => {
      worker.addEventListener('message', (event: MessageEvent<HeicAnswer>) => resolve(event.data));
      worker.addEventListener('error', (event) => reject(new Error(`HEIC worker: ${event.message}`)));
    });
    worker.postMessage(bytes);
    return await withinTime(answer, DECODE_LIMIT_S, signal);
  } finally {
    worker.terminate();
  }
}
