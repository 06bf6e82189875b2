/** One frame of the annotated clip: the lines over the picture, the values in the strip beneath. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { Track } from '../../marks/track.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import type { FrameSize } from '../viewer/view-transform.ts';
import { ANNOTATED, notSeenText, strokeAndUText } from '../words/curve.ts';
import { clipTimeText } from '../words/values.ts';
import { type Foot, paintFoot } from './clip-foot.ts';
import { followLines } from './follow-lines.ts';
import { type Context, paintFollow } from './paint-follow.ts';

export type Annotation = {
  readonly track: Track;
  readonly measurement: ClipMeasurement;
  readonly unit: LengthUnit;
};

export type ClipInstant = {
  /** Of the clip, not of the track. */
  readonly index: number;
  readonly timeTicks: number;
  readonly ticksPerSecond: number;
};

/** The picture is painted already. */
export function paintAnnotations(
  context: Context,
  picture: FrameSize,
  foot: Foot,
  annotation: Annotation,
  { index, timeTicks, ticksPerSecond }: ClipInstant,
): void {
  const { track, measurement, unit } = annotation;
  const i = index - track.firstIndex;
  const point = measurement.curve[i];
  const stroke = point?.stroke ? strokeAndUText(point.stroke, unit) : null;
  if (point) {
    const lines = followLines(track, i, measurement.drawings[i] ?? null);
    paintFollow(context, picture, lines, { stroke, unseen: lines.unseen.map(notSeenText) });
  }
  const unknown = point ? ANNOTATED.notSeen : ANNOTATED.notFollowed;
  paintFoot(context, foot, {
    left: stroke === null ? unknown : ANNOTATED.stroke(stroke),
    right: ANNOTATED.time(clipTimeText(timeTicks, ticksPerSecond), index),
  });
}
