/** Follows a clip from a view's marks, from where it was left if it was, and puts what comes of it into the record. */
import { assert } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { View } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import { measureInput } from '../../record/results.ts';
import { askedPicture } from '../media/asked-picture.ts';
import type { MediaState } from '../media/media-store.ts';
import { work } from '../stores.ts';
import { type Current, currentOf, viewOf } from '../work/current.ts';
import { clipViewsApart } from './clip-views-client.ts';
import { followKept, nothingSeen } from './follow-kept.ts';
import { type FollowPlan, followPlan, tooLong } from './follow-plan.ts';
import { followings } from './followings-store.ts';
import { type KeptFollowing, keptFollowing } from './kept-following.ts';
import { trackOf } from './track-of.ts';

export type Followable = {
  readonly key: string;
  readonly view: View;
  readonly capture: Capture;
  readonly file: Blob;
  readonly plan: FollowPlan;
};

/** Null: no clip, no file, or a mark that it needs is not there. */
export function followable({ record }: Current, view: View, files: MediaState['files']): Followable | null {
  const picture = askedPicture(record, files, view);
  const plan = followPlan(view);
  if (!picture?.frame || !picture.capture.clip || !plan) return null;
  const { capture, file, frame } = picture;
  const key = `${capture.sha256} ${frame.timeTicks} ${JSON.stringify(plan.question)}`;
  return { key, view, capture, file, plan };
}

/** What a reload or a stop left behind; null where there is nothing, or the device keeps nothing. */
export async function leftBehind(key: string): Promise<KeptFollowing | null> {
  const kept = await keptFollowing(key);
  return kept.ok ? kept.value : null;
}

export async function follow(current: Current, one: Followable): Promise<void> {
  const { key, view, capture, file, plan } = one;
  const failure = tooLong(capture);
  if (failure) return followings.set(key, { is: 'failed', failure });
  const task = {
    key,
    capture,
    file,
    seedIndex: view.frame?.index ?? 0,
    question: plan.question,
    within: null,
  };
  const begun = (await leftBehind(key)) ?? nothingSeen(key, null);
  await followKept(task, begun, (seen) => measureFollowed(current, one, seen));
}

/** Lost for all of an application, the pin seems to rest in one state, or always. */
const MENDABLE: readonly string[] = ['clip/one-state', 'clip/no-application', 'clip/pin-lost'];

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
    // Where the pin was lost a person can put it right: the track is there for that.
    const there = stillWith(view);
    if (there && MENDABLE.includes(made.failure.code))
      work.act({ type: 'take-followed', views: there.views, followed: { track, sideViews: [] } });
    return;
  }
  followings.forget(key);
  if (!stillWith(view)) return;
  const { views, sideViews } = made.value;
  work.act({ type: 'take-followed', views, followed: { track, sideViews } });
}

/** Meanwhile the view may have been taken from another picture, or its marks moved. */
function stillWith(view: View): MeasurementInput | null {
  const { open } = work.getState();
  const measurement = open && currentOf(open)?.measurement;
  return measurement && viewOf(measurement, view.state) === view ? measurement : null;
}
