import type { LengthUnit } from '../../basics/length-text.ts';
import { degFromRad } from '../../basics/units.ts';
import type { MeasurementFailure, MeasurementWarning } from '../../measurement/measurement.ts';
import { MARK_NAMES, MARK_PHRASES } from './marks.ts';
import { lengthText } from './values.ts';

/** Why there is no stroke yet, and what to do about it. */
export function measurementFailureText(failure: MeasurementFailure, unit: LengthUnit): string {
  switch (failure.code) {
    case 'measurement/view-missing':
      return `There is no ${failure.state} picture yet. Take one in step “Pictures”.`;
    case 'measurement/same-picture':
      return `The ${failure.states[0]} and the ${failure.states[1]} picture are the same one. Take another for one of them.`;
    case 'measurement/mark-missing':
      return `Still to be marked on the ${failure.state} picture: ${MARK_PHRASES[failure.kind]}.`;
    case 'measurement/no-scale':
      return 'Nothing of known size is marked yet, so there are no millimetres. Choose a reference in step “Reference” and mark it.';
    case 'measurement/too-few-points':
      return `${MARK_NAMES[failure.kind]}: ${failure.have} marked, ${failure.need} are needed in one picture.`;
    case 'measurement/points-coincide': {
      const [one, other] = failure.kinds;
      return `On the ${failure.state} picture ${MARK_PHRASES[one]} and ${MARK_PHRASES[other]} lie on one spot. Move one of them.`;
    }
    case 'measurement/views-swapped':
      return `The rod comes out ${lengthText(-failure.strokeMm, unit)} less on the applied picture than on the released one. Swap the pictures if they are the wrong way round.`;
    case 'measurement/capture-missing':
      return 'A picture of this record is not known here. Bring the file back, or take another picture.';
    case 'measurement/no-solution':
      return 'The marks do not fit one brake. Look for a mark on the wrong place or a graduation with the wrong reading.';
  }
}

export function measurementWarningText(warning: MeasurementWarning, unit: LengthUnit): string {
  switch (warning.code) {
    case 'measurement/marks-disagree':
      return `The marks disagree more than their uncertainty explains; U is widened ${warning.inflation.toFixed(1)} times for it.`;
    case 'measurement/mark-doubtful':
      return `${MARK_NAMES[warning.kind]} on the ${warning.state} picture fits the others badly. Look at it again.`;
    case 'measurement/focal-length-assumed':
      return 'The picture does not say its focal length; a usual phone camera is assumed, widely.';
    case 'measurement/profile-other-size':
      return 'The calibrated camera was set up at another picture size; a usual lens is assumed where it does not fit.';
    case 'measurement/camshaft-unmarked':
      return 'No arm angle: the end of the camshaft is not marked.';
    case 'measurement/distance-alone':
      return 'One known distance alone: the true uncertainty may be larger than the stated one.';
    case 'measurement/views-apart':
      return `The pictures were taken from directions ${degFromRad(warning.apartRad).toFixed(0)}° apart, with nothing that ties them together: the true uncertainty may be larger than the stated one.`;
    case 'measurement/two-solutions':
      return `The marks also fit a stroke of ${lengthText(warning.otherStrokeMm, unit)} (another view of the same lines). Add a reference or more marks.`;
  }
}
