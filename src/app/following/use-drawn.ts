import { useMemo } from 'react';
import type { Assessment } from '../../record/results.ts';
import type { Drawn } from '../curve/follow-lines.ts';
import { type Current, viewOf } from '../work/current.ts';

/** The drawing of the stroke on the released picture, where that is a frame of the track. */
export function useDrawn({ measurement }: Current, assessment: Assessment): Drawn | null {
  const measured = assessment.measurement.ok ? assessment.measurement.value : null;
  const drawing = measured?.drawings.find(({ state }) => state === 'released') ?? null;
  const track = measurement.followed?.track ?? null;
  const view = viewOf(measurement, 'released');
  const index = view && view.captureId === track?.captureId ? (view.frame?.index ?? null) : null;
  return useMemo(
    () => (drawing && track && index !== null ? { drawing, at: index - track.firstIndex } : null),
    [drawing, track, index],
  );
}
