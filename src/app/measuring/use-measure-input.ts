import { useMemo } from 'react';
import type { MeasureInput } from '../../measurement/measurement.ts';
import { measureInput } from '../../record/results.ts';
import type { Current } from '../work/current.ts';

/** The same object for as long as nothing that bears on the measurement has changed. */
export function useMeasureInput({ record, measurement }: Current): MeasureInput {
  const { captures, cameraProfiles } = record;
  const { views, references, cameraStill, cameraProfileId, followed } = measurement;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what else is in the record does not bear on the measurement.
  return useMemo(
    () => measureInput(record, measurement),
    [views, references, cameraStill, captures, cameraProfiles, cameraProfileId, followed],
  );
}
