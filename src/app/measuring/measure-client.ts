import type { Result } from '../../basics/result.ts';
import type { MeasureInput, Measurement, MeasurementFailure } from '../../measurement/measurement.ts';
import { workerClient } from './worker-client.ts';

export type Measured = Result<Measurement, MeasurementFailure>;

/** Answers with the measurement of the newest input. */
export const measureApart = workerClient<MeasureInput, Measured>(
  () => new Worker(new URL('./measure.worker.ts', import.meta.url), { type: 'module' }),
);
