/** Follows a study clip in Node as the worker of the page does: forwards and backwards from the seed. */
import { followPlan, tapeEvery } from '../../src/app/following/follow-plan.ts';
import { trackOf } from '../../src/app/following/track-of.ts';
import type { Track } from '../../src/marks/track.ts';
import { type Follower, startFollower } from '../../src/vision/follow.ts';
import type { FrameSight } from '../../src/vision/follow-sight.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { type StudyClip, seedView } from './tracking-clip.ts';
import { lumaFrames } from './tracking-frames.ts';

export type Followed = {
  readonly track: Track;
  /** Of the follower alone, each frame. */
  readonly frameMs: readonly number[];
};

const TICKS_PER_SECOND = 30_000;

export async function followInNode(clip: StudyClip): Promise<Followed | { readonly code: string }> {
  const timeTicks = clip.truth.frames.map(({ timeS }) => Math.round(timeS * TICKS_PER_SECOND));
  const view = seedView(clip, timeTicks[clip.seedIndex] ?? 0);
  const plan = followPlan(view);
  if (!plan) throw new Error('No plan');
  const { widthPx = 0, heightPx = 0 } = clip.truth.views[0] ?? {};
  const before: Gray[] = [];
  const frameMs: number[] = [];
  const backwards: FrameSight[] = [];
  const forwards: FrameSight[] = [];
  let stills: readonly (readonly [number, number])[] = [];
  let look: Follower['next'] | null = null;
  const every = tapeEvery(timeTicks.length);
  const timed = (next: Follower['next'], gray: Gray, index: number) => {
    const begun = performance.now();
    const sight = next(gray, index % every === 0);
    frameMs.push(performance.now() - begun);
    return sight;
  };
  for await (const { index, gray } of lumaFrames(clip.file, widthPx, heightPx)) {
    if (index < clip.seedIndex) before.push(gray);
    else if (look) forwards.push(timed(look, gray, index));
    else {
      const forth = startFollower(gray, plan.question, null);
      if (!forth.ok) return forth.failure;
      const back = forth.value.another(null);
      stills = forth.value.stills;
      look = forth.value.next;
      for (const [at, earlier] of [...before.splice(0).entries()].reverse())
        backwards.push(timed(back.next, earlier, at));
    }
  }
  const track = trackOf('t1', view, plan, { stills, timeTicks, sights: { forwards, backwards } });
  if (!track) throw new Error('No track');
  return { track, frameMs };
}
