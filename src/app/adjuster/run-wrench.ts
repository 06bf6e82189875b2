/** Follows a marked wrench through its clip and puts a picture of every rest into the adjuster check, in place of the marked one. */
import { assert } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import type { WrenchClip } from '../../measurement/wrench-clip.ts';
import { MOST_APPLICATIONS, MOST_TURNS, type WrenchTurn } from '../../record/wheel-end.ts';
import { followTold, NOTHING_SEEN } from '../following/follow-told.ts';
import { followings } from '../following/followings-store.ts';
import type { Seen } from '../following/track-of.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { changeCheck } from './change-check.ts';
import { markedWrench, wrenchQuestion } from './wrench-plan.ts';
import { wrenchRestsApart } from './wrench-rests-client.ts';
import { wrenchTrack } from './wrench-track.ts';

export type WrenchClipTask = {
  readonly key: string;
  readonly wheelEndId: string;
  readonly capture: Capture;
  readonly file: Blob;
  readonly turn: WrenchTurn;
};

export const wrenchKey = (wheelEndId: string, { captureId, frame }: WrenchTurn) =>
  `wrench ${wheelEndId} ${captureId} ${frame?.index ?? 0}`;

export async function followWrench(task: WrenchClipTask): Promise<void> {
  const { key, capture, file, turn } = task;
  const marked = markedWrench(turn);
  assert(marked && turn.frame && capture.clip, 'a clip is followed from a marked frame');
  const control = new AbortController();
  let seen: Seen = NOTHING_SEEN;
  const question = wrenchQuestion(marked);
  const asked = { key, capture, file, seedIndex: turn.frame.index, question, within: null };
  try {
    const ended = await followTold(asked, NOTHING_SEEN, control, (more) => {
      seen = more;
    });
    if (!ended.ok) return followings.set(key, { is: 'failed', failure: ended.failure });
    followings.set(key, { is: 'measuring' });
    const track = wrenchTrack(capture.id, turn.frame, marked, seen);
    const { ticksPerSecond } = capture.clip;
    const clip = await wrenchRestsApart({ ...track, ticksPerSecond }, control.signal);
    if (!clip.ok) return followings.set(key, { is: 'failed', failure: clip.failure });
    followings.forget(key);
    takeRests(task, clip.value, track.track);
  } catch (thrown) {
    followings.forget(key);
    reportUnlessAbort(thrown);
  }
}

/** Unless the marked picture is another by now. */
function takeRests(
  { wheelEndId, turn }: WrenchClipTask,
  { rests, applications, beforeSeed }: WrenchClip,
  { firstIndex, timeTicks }: { readonly firstIndex: number; readonly timeTicks: readonly number[] },
): void {
  const before = Math.max(0, turn.applicationsBefore - beforeSeed);
  const followed = rests.map(({ applicationsBefore, frame, centre, tip, arm }): WrenchTurn => {
    assert(arm, 'the arm is followed with the wrench');
    return {
      captureId: turn.captureId,
      frame: { index: firstIndex + frame, timeTicks: timeTicks[frame] as number },
      applicationsBefore: Math.min(MOST_APPLICATIONS, before + applicationsBefore),
      centre,
      tip,
      ...arm,
    };
  });
  changeCheck(wheelEndId, ({ turns, applications: said }) => {
    const at = turns.indexOf(turn);
    if (at < 0) return {};
    return {
      turns: [...turns.slice(0, at), ...followed, ...turns.slice(at + 1)].slice(0, MOST_TURNS),
      applications: Math.min(MOST_APPLICATIONS, Math.max(said ?? 0, before + applications)),
    };
  });
}
