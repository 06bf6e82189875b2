/** Follows a clip from a view's marks, from where it was left if it was, and puts what comes of it into the record. */
import { assert } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { View } from '../../marks/view.ts';
import { measureInput } from '../../record/results.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { createAutosave } from '../storage/autosave.ts';
import { work } from '../stores.ts';
import { type Current, currentOf, viewOf } from '../work/current.ts';
import { clipViewsApart } from './clip-views-client.ts';
import { followClip } from './follow-clip.ts';
import { type FollowPlan, followPlan } from './follow-plan.ts';
import { followings } from './followings-store.ts';
import { dropFollowing, type KeptFollowing, keepFollowing, keptFollowing } from './kept-following.ts';
import { trackOf } from './track-of.ts';

export type Followable = {
  readonly key: string;
  readonly view: View;
  readonly capture: Capture;
  readonly file: Blob;
  readonly plan: FollowPlan;
};

/** Null: no clip, no file, or a mark that it needs is not there. */
export function followable(
  { record }: Current,
  view: View,
  files: Readonly<Record<string, Blob | null | undefined>>,
): Followable | null {
  const capture = record.captures.find(({ id }) => id === view.captureId);
  const file = capture && files[capture.sha256];
  const plan = followPlan(view);
  if (!capture?.clip || !file || !view.frame || !plan) return null;
  const key = `${capture.sha256} ${view.frame.timeTicks} ${JSON.stringify(plan.question)}`;
  return { key, view, capture, file, plan };
}

/** What a reload or a stop left behind; null where there is nothing, or the device keeps nothing. */
export async function leftBehind(key: string): Promise<KeptFollowing | null> {
  const kept = await keptFollowing(key);
  return kept.ok ? kept.value : null;
}

const NOTHING_SEEN = {
  stills: [],
  timeTicks: [],
  sights: { forwards: [], backwards: [] },
  states: { forwards: null, backwards: null },
  stopped: false,
} as const;

export async function follow(current: Current, one: Followable): Promise<void> {
  const { key, view, capture, file, plan } = one;
  const control = new AbortController();
  let seen: KeptFollowing = { ...((await leftBehind(key)) ?? { ...NOTHING_SEEN, key }), stopped: false };
  const saving = createAutosave<KeptFollowing>(
    () => key,
    async (state) => void (await keepFollowing(state)),
  );
  const countOf = ({ sights }: KeptFollowing) => 1 + sights.forwards.length + sights.backwards.length;
  const begun = { atMs: performance.now(), count: countOf(seen) };
  const tell = () => {
    const done = countOf(seen);
    const of = seen.timeTicks.length || null;
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
    const task = {
      capture,
      file,
      seedIndex: view.frame?.index ?? 0,
      question: plan.question,
      from: { forwards: from('forwards'), backwards: from('backwards') },
    };
    const ended = await followClip(
      task,
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
    await measureFollowed(current, one, seen);
    await saving.settled();
    await dropFollowing(key);
  } catch (thrown) {
    if (control.signal.aborted) {
      saving.changed({ ...seen, stopped: true });
      followings.set(key, { is: 'stopped', done: countOf(seen), of: seen.timeTicks.length });
    } else {
      followings.forget(key);
      reportUnlessAbort(thrown);
    }
  }
}

/** Measures with what was seen so far, all of the clip or a part. */
export async function measureFollowed(
  current: Current,
  { key, view, plan }: Followable,
  seen: KeptFollowing,
): Promise<void> {
  followings.set(key, { is: 'measuring' });
  const track = trackOf(crypto.randomUUID(), view, plan, seen);
  assert(track, 'a clip is followed from a frame');
  const made = await clipViewsApart({ input: measureInput(current.record, current.measurement), track });
  if (!made.ok) {
    followings.set(key, { is: 'failed', failure: made.failure });
    return;
  }
  followings.forget(key);
  if (!isStillThere(view)) return;
  const { views, sideViews } = made.value;
  work.act({ type: 'take-followed', views, followed: { track, sideViews } });
}

/** Meanwhile the view may have been taken from another picture, or its marks moved. */
function isStillThere(view: View): boolean {
  const { open } = work.getState();
  const measurement = open && currentOf(open)?.measurement;
  return (measurement && viewOf(measurement, view.state)) === view;
}
