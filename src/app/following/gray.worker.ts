/**
 * Decodes a clip for the following worker, some frames ahead of it. In a thread of its own: browsers hand a decoder its next piece when the
 * thread that asked is free, and while that looks at a frame, decoding would stand still. One task, then it is ended.
 */
import { fail, type Result } from '../../basics/result.ts';
import { type ClipTrack, openClipTrack } from '../../captures/clip-track.browser.ts';
import { FIRST_BYTES, isPhotoType, mediaTypeOf } from '../../captures/media-type.ts';
import { framesOf } from '../../frames/frame.ts';
import { brokeOff, type FollowerFailure } from './follow-task.ts';
import { type GraySource, graysAbout } from './gray-frames.ts';
import type { GrayAsked, GraySaid, GrayTask } from './gray-task.ts';

/** Frames handed over and not yet given back. */
const MOST_AHEAD = 4;

const spares: GraySource['spares'] = [];
let ahead = 0;
let givenBack = () => {};

addEventListener('message', async ({ data }: MessageEvent<GrayAsked>) => {
  if (data.is === 'seen') {
    spares.push(new Uint8Array(data.bytes));
    ahead -= 1;
    givenBack();
    return;
  }
  const failure = await decode(data.task).catch((thrown: unknown) => brokeOff(String(thrown)));
  say(failure ? { is: 'failed', failure } : { is: 'done' });
});

async function decode({ file, seedIndex, before, after }: GrayTask): Promise<FollowerFailure | null> {
  const opened = await openClip(file);
  if (!opened.ok) return opened.failure;
  const clip = opened.value;
  try {
    const frames = framesOf(clip.clock.times);
    const to = after.to ?? frames.length;
    const grays = graysAbout({ clip, frames, spares }, seedIndex, before, { ...after, to });
    const seed = (await grays.next()).value;
    if (!seed) return brokeOff('the seed frame does not decode');
    say({ is: 'begun', timeTicks: frames.map(({ timeTicks }) => timeTicks), seed: seed.gray });
    for await (const frame of grays) {
      say({ is: 'frame', frame }, [frame.gray.values.buffer as ArrayBuffer]);
      ahead += 1;
      while (ahead >= MOST_AHEAD)
        await new Promise<void>((resolve) => {
          givenBack = resolve;
        });
    }
    return null;
  } finally {
    clip.close();
  }
}

async function openClip(file: Blob): Promise<Result<ClipTrack, FollowerFailure>> {
  const kind = mediaTypeOf(new Uint8Array(await file.slice(0, FIRST_BYTES).arrayBuffer()));
  if (!kind.ok) return kind;
  if (isPhotoType(kind.value)) return fail(brokeOff('a photo'));
  return openClipTrack({ blob: file, mediaType: kind.value, signal: new AbortController().signal });
}

function say(said: GraySaid, handedOver: Transferable[] = []): void {
  postMessage(said, { transfer: handedOver });
}
