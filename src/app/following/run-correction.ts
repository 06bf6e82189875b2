/** Follows a clip on from a frame that a person put right. What was followed before stays until what is new is measured. */
import type { Capture } from '../../captures/capture.ts';
import { joinedTrack } from '../../marks/joined-track.ts';
import type { Correction, Track } from '../../marks/track.ts';
import type { View } from '../../marks/view.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { measureInput } from '../../record/results.ts';
import { work } from '../stores.ts';
import { clipViewsApart } from './clip-views-client.ts';
import { correctionPlan, pointsOf } from './correction-plan.ts';
import { followKept, nothingSeen } from './follow-kept.ts';
import { followings } from './followings-store.ts';
import { dropFollowing, type KeptFollowing, keptFollowing } from './kept-following.ts';

export type Correctable = {
  readonly track: Track;
  /** That the track was followed from. */
  readonly seed: View;
  readonly capture: Capture;
  readonly file: Blob;
};

export const correctionKey = ({ id }: Track): string => `put right ${id}`;

/** What a reload broke off, goes on; what a person stopped is given up. */
export async function goOnPuttingRight(one: Correctable): Promise<void> {
  const key = correctionKey(one.track);
  const kept = await keptFollowing(key);
  if (!kept.ok || !kept.value?.correction || followings.getState().followings[key]) return;
  if (kept.value.stopped) await dropFollowing(key);
  else await followFrom(one, kept.value, kept.value.correction);
}

export function putRight(one: Correctable, correction: Correction): Promise<void> {
  return followFrom(one, nothingSeen(correctionKey(one.track), correction), correction);
}

async function followFrom(
  { track, seed, capture, file }: Correctable,
  before: KeptFollowing,
  correction: Correction,
): Promise<void> {
  const plan = correctionPlan(track, seed, correction);
  if (!plan) return;
  const { question, within } = plan;
  const { index } = correction.frame;
  const task = { key: before.key, capture, file, seedIndex: index, question, within };
  await followKept(task, before, (seen) => {
    const points = pointsOf(track, plan, seen, index);
    const joined = joinedTrack(track, seed.marks, correction, points);
    return measureJoined(track, { ...joined, id: crypto.randomUUID() });
  });
}

/** Unless another was followed meanwhile, or it was taken back. */
async function measureJoined(before: Track, track: Track): Promise<void> {
  const key = correctionKey(before);
  followings.set(key, { is: 'measuring' });
  const asked = placeOf(before);
  if (!asked) return followings.forget(key);
  const made = await clipViewsApart({ input: measureInput(asked.record, asked.measurement), track });
  const now = placeOf(before);
  followings.forget(key);
  if (!now) return;
  // Where the new track gives no views, it stays to be put right further, beside the views that there were.
  const { views, sideViews } = made.ok
    ? made.value
    : { views: now.measurement.views, sideViews: now.followed.sideViews };
  work.actOn(now.target, { type: 'take-followed', views, followed: { track, sideViews } });
  if (!made.ok) followings.set(correctionKey(track), { is: 'failed', failure: made.failure });
}

function placeOf({ id }: Track) {
  const record: InspectionRecord | undefined = work.getState().open?.history.present;
  for (const wheelEnd of record?.wheelEnds ?? [])
    for (const measurement of wheelEnd.measurements) {
      const { followed } = measurement;
      if (record && followed?.track.id === id)
        return {
          record,
          measurement,
          followed,
          target: { wheelEndId: wheelEnd.id, measurementId: measurement.id },
        };
    }
  return null;
}
