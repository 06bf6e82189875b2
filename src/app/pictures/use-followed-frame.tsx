import type { ReactNode } from 'react';
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import type { Assessment } from '../../record/results.ts';
import { FollowOverlay } from '../curve/FollowOverlay.tsx';
import { useClipCurve } from '../following/use-clip-curve.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import type { ViewerStore } from '../viewer/viewer-store.ts';
import { strokeAndUText } from '../words/curve.ts';
import type { Current } from '../work/current.ts';
import { gaveViews } from '../work/followed-from.ts';

export type FollowedFrame = {
  /** Null where nothing came of it: it can be looked at, and put right. */
  readonly clip: ClipMeasurement | null;
  readonly firstIndex: number;
  /** The frame at hand, counted from the track's first. */
  readonly at: number;
  readonly limitMm: number | null;
  readonly over: (store: ViewerStore) => ReactNode;
};

/** What following this clip says of the frame; null where another clip was followed, or none. */
export function useFollowedFrame(
  current: Current,
  assessment: Assessment,
  capture: Capture,
  frame: Frame | null,
): FollowedFrame | null {
  const unit = useLengthUnit();
  const answer = useClipCurve(current);
  const track = current.measurement.followed?.track;
  const clip = answer?.ok ? answer.value : null;
  const waiting = !clip && gaveViews(current.measurement);
  if (waiting || !frame || track?.captureId !== capture.id) return null;
  const at = frame.index - track.firstIndex;
  const stroke = clip?.curve[at]?.stroke ?? null;
  const limits = assessment.finding.limit?.values.map(({ limitMm }) => limitMm) ?? [];
  return {
    clip,
    firstIndex: track.firstIndex,
    at,
    limitMm: limits.length > 0 ? Math.min(...limits) : null,
    over: (store) => (
      <FollowOverlay
        store={store}
        track={track}
        frame={at}
        drawing={clip?.drawings[at] ?? null}
        text={stroke && strokeAndUText(stroke, unit)}
      />
    ),
  };
}
