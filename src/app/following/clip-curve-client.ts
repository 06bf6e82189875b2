import type { Result } from '../../basics/result.ts';
import type { Track } from '../../marks/track.ts';
import type { ClipFailure, ClipMeasurement } from '../../measurement/clip-measurement.ts';
import type { MeasureInput, MeasurementFailure } from '../../measurement/measurement.ts';
import { workerClient } from '../measuring/worker-client.ts';

export type ClipQuestion = { readonly input: MeasureInput; readonly track: Track };
export type ClipAnswer = Result<ClipMeasurement, ClipFailure | MeasurementFailure>;

/** Answers with what every frame of the newest question's clip says. */
export const clipCurveApart = workerClient<ClipQuestion, ClipAnswer>(
  () => new Worker(new URL('./clip-curve.worker.ts', import.meta.url), { type: 'module' }),
);
