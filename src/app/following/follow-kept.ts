/** Follows a clip on from what was seen before, and keeps on the device what is seen. */
import type { Correction } from '../../marks/track.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { createAutosave } from '../storage/autosave.ts';
import { followTold, frameCount, NOTHING_SEEN, seenCount, type ToldTask } from './follow-told.ts';
import { followings } from './followings-store.ts';
import { dropFollowing, type KeptFollowing, keepFollowing } from './kept-following.ts';

export const nothingSeen = (key: string, correction: Correction | null): KeptFollowing => ({
  ...NOTHING_SEEN,
  key,
  correction,
  stopped: false,
});

/** take: what is made of it once all is seen. */
export async function followKept(
  task: ToldTask,
  before: KeptFollowing,
  take: (seen: KeptFollowing) => Promise<void>,
): Promise<void> {
  const { key } = task;
  const control = new AbortController();
  let seen: KeptFollowing = { ...before, stopped: false };
  const saving = createAutosave<KeptFollowing>(
    () => key,
    async (state) => void (await keepFollowing(state)),
  );
  // Before it is shown to be under way, so that a page that is closed then goes on by itself as well.
  await keepFollowing(seen);
  try {
    const ended = await followTold(task, seen, control, (more) => {
      seen = { ...seen, ...more };
      saving.changed(seen);
    });
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
      followings.set(key, { is: 'stopped', done: seenCount(seen), of: frameCount(task, seen) });
    } else {
      followings.forget(key);
      reportUnlessAbort(thrown);
    }
  }
}
