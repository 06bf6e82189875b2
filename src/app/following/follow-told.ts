/** Follows a clip on from what was seen before, and tells the page how far it is. */
import { followClip } from './follow-clip.ts';
import type { FollowTask } from './follow-task.ts';
import { followings } from './followings-store.ts';
import type { SeenSoFar } from './track-of.ts';

export const NOTHING_SEEN: SeenSoFar = {
  stills: [],
  timeTicks: [],
  sights: { forwards: [], backwards: [] },
  states: { forwards: null, backwards: null },
};

export type ToldTask = Omit<FollowTask, 'from'> & { readonly key: string };

export const seenCount = ({ sights }: SeenSoFar): number =>
  1 + sights.forwards.length + sights.backwards.length;

/** How many frames there are to see; 0 until the clip is open. */
export const frameCount = ({ within }: ToldTask, { timeTicks }: SeenSoFar): number =>
  within && timeTicks.length > 0 ? within.to - within.from : timeTicks.length;

/** seenMore: with all that was seen so far. Rejects with the reason when aborted. */
export function followTold(
  task: ToldTask,
  before: SeenSoFar,
  control: AbortController,
  seenMore: (seen: SeenSoFar) => void,
): ReturnType<typeof followClip> {
  let seen = before;
  const begun = { atMs: performance.now(), count: seenCount(seen) };
  const tell = () => {
    const done = seenCount(seen);
    const of = frameCount(task, seen) || null;
    const perFrameS = (performance.now() - begun.atMs) / 1000 / Math.max(1, done - begun.count);
    const leftS = of !== null && done > begun.count + 5 ? perFrameS * (of - done) : null;
    followings.set(task.key, { is: 'under-way', control, done, of, leftS });
  };
  tell();
  const from = (direction: 'forwards' | 'backwards') => ({
    count: seen.sights[direction].length,
    state: seen.states[direction],
  });
  return followClip(
    { ...task, from: { forwards: from('forwards'), backwards: from('backwards') } },
    (said) => {
      if (said.is === 'begun') seen = { ...seen, stills: said.stills, timeTicks: said.timeTicks };
      else {
        const { direction, sights, state } = said;
        seen = {
          ...seen,
          sights: { ...seen.sights, [direction]: [...seen.sights[direction], ...sights] },
          states: { ...seen.states, [direction]: state },
        };
      }
      seenMore(seen);
      tell();
    },
    control.signal,
  );
}
