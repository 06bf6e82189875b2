import type { BrakeState, View } from '../../marks/view.ts';
import { playedClipsOf } from '../../record/played-clips.ts';
import { type Current, viewOf } from '../work/current.ts';

const BOTH: readonly BrakeState[] = ['released', 'applied'];

/** A frame of a clip, and a picture of the other state is not there: it comes of following. What a player shows is not followed. */
export function followsNext({ record, measurement }: Current, view: View): boolean {
  return (
    view.frame !== null &&
    measurement.followed === null &&
    BOTH.some((state) => !viewOf(measurement, state)) &&
    playedClipsOf(record, measurement).length === 0
  );
}
