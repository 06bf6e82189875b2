import { useEffect, useState } from 'react';
import { useMeasureInput } from '../measuring/use-measure-input.ts';
import type { Current } from '../work/current.ts';
import { gaveViews } from '../work/followed-from.ts';
import { type ClipAnswer, clipCurveApart } from './clip-curve-client.ts';

/** Computed from the record, as all results are; null while nothing is followed or nothing came of it, or until the first answer is there. */
export function useClipCurve(current: Current): ClipAnswer | null {
  const input = useMeasureInput(current);
  const { measurement } = current;
  const track = gaveViews(measurement) ? (measurement.followed?.track ?? null) : null;
  const [answer, setAnswer] = useState<ClipAnswer | null>(null);
  useEffect(() => {
    if (track) clipCurveApart({ input, track }, setAnswer);
    else setAnswer(null);
  }, [input, track]);
  return track ? answer : null;
}
