/** Follows a clip on from what was seen before, keeps on the device what is seen, and tells how far it is. */
import type { Correction } from '../../marks/track.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { createAutosave } from '../storage/autosave.ts';
import { followClip } from './follow-clip.ts';
import type { FollowTask } from './follow-task.ts';
import { followings } from './followings-store.ts';
import { dropFollowing, type KeptFollowing, keepFollowing } from './kept-following.ts';

export const nothingSeen = (key: string, correction: Correction | null): KeptFollowing => ({
  key,
  correction,
  stills: [],
  timeTicks: [],
  sights: { forwards: [], backwards: [] },
  states: { forwards: null, backwards: null },
  stopped: false,
});

export type KeptTask = Omit<FollowTask, 'from'> & { readonly key: string };

/** take: what is made of it once all is seen. */
export async function followKept(
  task: KeptTask,
  before: KeptFollowing,
  take: (seen: KeptFollowing) => Promise<void>,
): Promise<void> {
  const { key, within } = task;
  const control = new AbortController();
  let seen: KeptFollowing = { ...before, stopped: false };
  const saving = createAutosave<KeptFollowing>(
    () => key,
    async (state) => void (await keepFollowing(state)),
  );
  const countOf = ({ sights }: KeptFollowing) => 1 + sights.forwards.length + sights.backwards.length;
  const whole = () => (within && seen.timeTicks.length > 0 ? within.to - within.from : seen.timeTicks.length);
  const begun = { atMs: performance.now(), count: countOf(seen) };
  const tell = () => {
    const done = countOf(seen);
    const of = whole() || null;
    const perFrameS = (performance.now() - begun.atMs) / 1000 / Math.max(1, done - begun.count);
    const leftS = of !== null && done > begun.count + 5 ? perFrameS * (of - done) : null;
    followings.set(key, { is: 'under-way', control, done, of, leftS });
  };
  tell();
  // From the first moment, so that a page that is closed then goes on by itself as well.
  saving.changed(seen);
  try {
    const from = (direction: 'forwards' | 'backwards') => ({
      count: seen.sights[direction].length,
      state: seen.states[direction],
    });
    const ended = await followClip(
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
          saving.changed(seen);
        }
        tell();
      },
      control.signal,
    );
    if (!ended.ok) {
      followings.set(key, { is: 'failed', failure: ended.failure });
      return;
    }
    await take(seen);
    await saving.settled();
    await dropFollowing(key);
  } catch (thrown) {
    if (control.signal.aborted) {
      saving.changed({ ...seen, stopped: true });
      followings.set(key, { is: 'stopped', done: countOf(seen), of: whole() });
    } else {
      followings.forget(key);
      reportUnlessAbort(thrown);
    }
  }
}
