/** Follows the marks of one frame through a clip: decodes, looks, and says what it saw as it goes. One task, then it is ended. */

import { fail, ok, type Result } from '../../basics/result.ts';
import { type ClipTrack, openClipTrack } from '../../captures/clip-track.browser.ts';
import { FIRST_BYTES, isPhotoType, mediaTypeOf } from '../../captures/media-type.ts';
import { framesOf } from '../../frames/frame.ts';
import { type Follower, startFollower } from '../../vision/follow.ts';
import type { FollowedSight, FollowQuestion, FrameSight } from '../../vision/follow-sight.ts';
import { startOpencv } from '../../vision/start-opencv.browser.ts';
import { tapeEvery } from './follow-plan.ts';
import type { Direction, FollowerFailure, FollowSaid, FollowTask } from './follow-task.ts';
import { type GrayFrame, graysAbout } from './gray-frames.ts';
import { type LumaPlaces, lumaPlaces } from './luma-places.ts';

/** So often what was seen is handed on: a page that is closed loses no more than this. */
const HAND_ON_MS = 300;

const opencv = startOpencv().then((started) => (started.ok ? ok({ cv: started.value }) : started));

addEventListener('message', async (event: MessageEvent<FollowTask>) => {
  const failure = await follow(event.data).catch((thrown: unknown): FollowerFailure => {
    return brokeOff(String(thrown));
  });
  say(failure ? { is: 'failed', failure } : { is: 'done' });
});

async function follow(task: FollowTask): Promise<FollowerFailure | null> {
  const opened = await openClip(task.file);
  if (!opened.ok) return opened.failure;
  const clip = opened.value;
  try {
    const started = await opencv;
    if (!started.ok) return started.failure;
    const frames = framesOf(clip.clock.times);
    const { from, to } = task.within ?? { from: 0, to: frames.length };
    const grays = await graysAbout(clip, frames, task.seedIndex, {
      before: { from, to: task.seedIndex - task.from.backwards.count },
      after: { from: task.seedIndex + 1 + task.from.forwards.count, to },
    });
    if (!grays) return brokeOff('the seed frame does not decode');
    const places = lumaPlaces(task.capture, grays.seed);
    const question = questionIn(places, task.question);
    const first = startFollower(started.value.cv, grays.seed, question, task.from.forwards.state);
    if (!first.ok) return first.failure;
    say({
      is: 'begun',
      stills: first.value.stills.map(places.toUpright),
      timeTicks: frames.map(({ timeTicks }) => timeTicks),
    });
    const how = { places, tapeEvery: tapeEvery(frames.length) };
    await lookThrough('forwards', first.value, grays.forwards(), how);
    await lookThrough('backwards', first.value.another(task.from.backwards.state), grays.backwards(), how);
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

async function lookThrough(
  direction: Direction,
  follower: Follower,
  frames: AsyncGenerator<GrayFrame>,
  { places, tapeEvery }: { readonly places: LumaPlaces; readonly tapeEvery: number },
): Promise<void> {
  let sights: FrameSight[] = [];
  let handedOnMs = performance.now();
  const handOn = () => {
    if (sights.length > 0) say({ is: 'seen', direction, sights, state: follower.state() });
    sights = [];
    handedOnMs = performance.now();
  };
  for await (const { index, gray } of frames) {
    sights.push(upright(follower.next(gray, index % tapeEvery === 0), places));
    if (performance.now() - handedOnMs > HAND_ON_MS) handOn();
  }
  handOn();
}

function questionIn({ fromUpright }: LumaPlaces, question: FollowQuestion): FollowQuestion {
  const [ox, oy] = fromUpright([0, 0]);
  const step = (way: readonly [number, number]) => {
    const [x, y] = fromUpright(way);
    return [x - ox, y - oy] as const;
  };
  return {
    things: question.things.map((thing) => {
      const placePx = fromUpright(thing.placePx);
      return thing.how === 'swings'
        ? { ...thing, placePx, aboutPx: fromUpright(thing.aboutPx) }
        : { ...thing, placePx };
    }),
    tape: question.tape.map((graduation) => ({ ...graduation, placePx: fromUpright(graduation.placePx) })),
    aboutPx: fromUpright(question.aboutPx),
    leaveOut: question.leaveOut.map((outline) => outline.map(fromUpright)),
    reachPx: { out: step(question.reachPx.out), back: step(question.reachPx.back) },
  };
}

function upright({ things, stills, tape }: FrameSight, { toUpright }: LumaPlaces): FrameSight {
  const turned = (sight: FollowedSight): FollowedSight => ({ ...sight, placePx: toUpright(sight.placePx) });
  return {
    things: things.map((sight) => (typeof sight === 'string' ? sight : turned(sight))),
    stills: stills.map((sight) => sight && turned(sight)),
    tape: tape.map((sight) => sight && turned(sight)),
  };
}

function say(said: FollowSaid): void {
  postMessage(said);
}

function brokeOff(detail: string): FollowerFailure {
  return { code: 'follow/broke-off', detail };
}
