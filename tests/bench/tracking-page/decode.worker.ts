/** Decodes a clip and does nothing with it: what following can never be faster than. One task, then it is ended. */
import { openClipTrack } from '../../../src/captures/clip-track.browser.ts';
import { ClipRun } from '../../../src/frames/clip-run.browser.ts';
import type { Frame } from '../../../src/frames/frame.ts';

export type Decoding = { readonly frames: number; readonly seconds: number };

addEventListener('message', async ({ data }: MessageEvent<Blob>) => {
  const opened = await openClipTrack({
    blob: data,
    mediaType: 'video/mp4',
    signal: new AbortController().signal,
  });
  if (!opened.ok) throw new Error(opened.failure.code);
  const clip = opened.value;
  const places = clip.clock.times.map(({ timeTicks }, index): Frame => ({ index, timeTicks }));
  const run = new ClipRun(clip, places, 0);
  const begun = performance.now();
  let frames = 0;
  for (let decoded = await run.step(); decoded; decoded = await run.step()) {
    decoded.sample.close();
    frames += 1;
  }
  postMessage({ frames, seconds: (performance.now() - begun) / 1000 } satisfies Decoding);
  run.stop();
  clip.close();
});
