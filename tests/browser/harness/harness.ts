/** Puts the media modules on a bare page, for media.spec.ts alone; no part of what is shipped. */
import type { Capture } from '../../../src/captures/capture.ts';
import { fingerprint } from '../../../src/captures/fingerprint.browser.ts';
import { openCapture } from '../../../src/captures/open-capture.browser.ts';
import { isAbort } from '../../../src/captures/time-limit.browser.ts';
import type { Frame } from '../../../src/frames/frame.ts';
import type { FrameSource } from '../../../src/frames/frame-source.browser.ts';
import { openFrames } from '../../../src/frames/open-frames.browser.ts';
import { livePictures } from './live-pictures.ts';

type Point = readonly [x: number, y: number];

export type Seen =
  | { readonly widthPx: number; readonly heightPx: number; readonly rgb: readonly (readonly number[])[] }
  | { readonly code: string }
  | 'ended';

const forever = new AbortController().signal;
const live = livePictures();

function file(name: string): File {
  const files = document.querySelector('input')?.files ?? [];
  const found = [...files].find((each) => each.name === name);
  if (!found) throw new Error(`No file ${name}`);
  return found;
}

async function capture(name: string) {
  const opened = await openCapture(file(name), { id: 'c1', signal: forever });
  return opened.ok ? { capture: opened.value.capture } : { failure: opened.failure };
}

async function source(name: string, blobName = name): Promise<FrameSource> {
  const opened = await openCapture(file(name), { id: 'c1', signal: forever });
  if (!opened.ok) throw new Error(opened.failure.code);
  const frames = await openFrames(opened.value.capture, file(blobName));
  if (!frames.ok) throw new Error(frames.failure.code);
  return frames.value;
}

async function look(
  from: FrameSource,
  frame: Frame | null,
  points: readonly Point[],
  signal = forever,
): Promise<Seen> {
  try {
    const picture = await from.picture(frame, signal);
    if (!picture.ok) return { code: picture.failure.code };
    const { width, height } = picture.value;
    const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
    if (!context) throw new Error('No canvas');
    context.drawImage(picture.value, 0, 0);
    picture.value.close();
    const rgb = points.map(([x, y]) => [...context.getImageData(x, y, 1, 1).data.subarray(0, 3)]);
    return { widthPx: width, heightPx: height, rgb };
  } catch (reason) {
    if (isAbort(reason)) return 'ended';
    throw reason;
  }
}

function frameAt(from: FrameSource, index: number): Frame {
  const frame = from.frames[index];
  if (!frame) throw new Error(`No frame ${index}`);
  return frame;
}

/** One after the other; null stands for a photo's picture. */
async function pictures(name: string, indices: readonly (number | null)[], points: readonly Point[]) {
  const from = await source(name);
  const seen: Seen[] = [];
  for (const index of indices)
    seen.push(await look(from, index === null ? null : frameAt(from, index), points));
  const liveBeforeClose = live();
  from.close();
  from.close();
  await new Promise((resolve) => setTimeout(resolve, 100));
  return { frames: from.frames, seen, liveBeforeClose, liveAfterClose: live() };
}

/** All asked for at once. */
async function rush(name: string, indices: readonly number[], points: readonly Point[]) {
  const from = await source(name);
  const seen = await Promise.all(indices.map((index) => look(from, frameAt(from, index), points)));
  from.close();
  await new Promise((resolve) => setTimeout(resolve, 100));
  return { seen, liveAfterClose: live() };
}

async function endedRequests(name: string) {
  const from = await source(name);
  const control = new AbortController();
  const aborted = look(from, frameAt(from, 40), [], control.signal);
  control.abort();
  const seenAborted = await aborted;
  const closed = look(from, frameAt(from, 50), []);
  from.close();
  const opening = new AbortController();
  const openingAborted = openCapture(file(name), { id: 'c1', signal: opening.signal }).then(
    () => 'opened',
    (reason) => (isAbort(reason) ? 'ended' : 'error'),
  );
  opening.abort();
  return {
    seenAborted,
    closed: await closed,
    after: await look(from, frameAt(from, 1), []),
    opening: await openingAborted,
  };
}

async function wrongFrame(name: string): Promise<Seen> {
  const from = await source(name);
  const seen = await look(from, { index: 3, timeTicks: frameAt(from, 3).timeTicks + 1 }, []);
  from.close();
  return seen;
}

async function openedAs(recorded: Capture, name: string) {
  const frames = await openFrames(recorded, file(name));
  if (frames.ok) frames.value.close();
  return frames.ok ? null : frames.failure;
}

const harness = {
  capture,
  pictures,
  rush,
  endedRequests,
  wrongFrame,
  openedAs,
  fingerprint: (name: string) => fingerprint(file(name), forever),
};

export type Harness = typeof harness;

Object.assign(globalThis, { harness });
