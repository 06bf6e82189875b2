/** Puts the following worker on a bare page, for bench:tracking alone; no part of what is shipped. */
import { followClip, makeFollowingReady } from '../../../src/app/following/follow-clip.ts';
import type { Seen } from '../../../src/app/following/track-of.ts';
import { openCapture } from '../../../src/captures/open-capture.browser.ts';
import type { FollowQuestion, FrameSight } from '../../../src/vision/follow-sight.ts';
import type { Decoding } from './decode.worker.ts';

export type PageFollowed = {
  readonly seen: Seen;
  readonly ticksPerSecond: number;
  /** From the task to the first word: library, index, seed frame, what stands still. */
  readonly startS: number;
  /** From there to the end. */
  readonly followS: number;
};

const READY_MS = 1000;
const forever = new AbortController().signal;

function chosen(): File {
  const file = document.querySelector('input')?.files?.[0];
  if (!file) throw new Error('No file');
  return file;
}

function decode(): Promise<Decoding> {
  const worker = new Worker(new URL('./decode.worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Decoding>((resolve, reject) => {
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.postMessage(chosen());
  }).finally(() => worker.terminate());
}

async function follow(
  seedIndex: number,
  question: FollowQuestion,
): Promise<PageFollowed | { readonly code: string }> {
  const file = chosen();
  const opened = await openCapture(file, { id: 'c1', signal: forever });
  if (!opened.ok) return opened.failure;
  const { capture } = opened.value;
  // As in the page while a person looks at the marks.
  makeFollowingReady();
  await new Promise((resolve) => setTimeout(resolve, READY_MS));
  let begun = performance.now();
  const started = begun;
  let stills: Seen['stills'] = [];
  let timeTicks: Seen['timeTicks'] = [];
  const sights = { forwards: [] as FrameSight[], backwards: [] as FrameSight[] };
  const nothing = { count: 0, state: null };
  const ended = await followClip(
    { capture, file, seedIndex, question, within: null, from: { forwards: nothing, backwards: nothing } },
    (said) => {
      if (said.is === 'seen') sights[said.direction].push(...said.sights);
      else {
        ({ stills, timeTicks } = said);
        begun = performance.now();
      }
    },
    forever,
  );
  if (!ended.ok) return ended.failure;
  return {
    seen: { stills, timeTicks, sights },
    ticksPerSecond: capture.clip?.ticksPerSecond ?? 0,
    startS: (begun - started) / 1000,
    followS: (performance.now() - begun) / 1000,
  };
}

const bench = { decode, follow };
export type TrackingBench = typeof bench;
Object.assign(globalThis, { bench });
