/** The step at which a person can mend what keeps a measurement from its stroke, or its stroke from a limit. */
import type { Finding } from '../../finding/decision.ts';
import type { MeasurementFailure } from '../../measurement/measurement.ts';
import type { Step } from './steps.ts';

export function mendedAt(failure: MeasurementFailure): Step {
  switch (failure.code) {
    case 'measurement/view-missing':
    case 'measurement/same-picture':
    case 'measurement/views-swapped':
    case 'measurement/capture-missing':
      return 'pictures';
    case 'measurement/no-scale':
      return 'reference';
    case 'measurement/mark-missing':
    case 'measurement/points-coincide':
      return `marks-${failure.state}`;
    case 'measurement/too-few-points':
    case 'measurement/no-solution':
      return 'marks-released';
  }
}

/** Null where what is open has no one step. */
export function decidedAt({ reasons }: Finding): Step | null {
  return reasons.some(({ code }) => code === 'finding/limit-unknown') ? 'chamber' : null;
}
