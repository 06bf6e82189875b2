/** The steps in the order of the work. The pulled picture for free stroke is extra work, so its step comes with the picture. */
import { BRAKE_STATES, type BrakeState } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import { askedMarks, missingOf } from './asked-marks.ts';
import { viewOf } from './current.ts';

export const STEPS = [
  'pictures',
  'reference',
  'marks-released',
  'marks-applied',
  'marks-pulled',
  'chamber',
  'over-stroke',
  'finding',
] as const;
export type Step = (typeof STEPS)[number];

export function stepsOf(measurement: MeasurementInput): readonly Step[] {
  const pulled = viewOf(measurement, 'pulled') !== null;
  return STEPS.filter((step) => step !== 'marks-pulled' || pulled);
}

export function markedState(step: Step): BrakeState | null {
  return BRAKE_STATES.find((state) => step === `marks-${state}`) ?? null;
}

/** Whether everything the step asks for is there. The finding is never 'done': it follows from the rest. */
export function stepDone(step: Step, wheelEnd: WheelEnd, measurement: MeasurementInput): boolean {
  const { references, overStrokeMark } = measurement;
  const state = markedState(step);
  if (state !== null) {
    const view = viewOf(measurement, state);
    if (view === null) return false;
    // The view that came of following a clip has all that could be followed.
    const { followed } = measurement;
    const came = followed !== null && followed.track.state !== state && state !== 'pulled';
    return came || askedMarks(view, measurement).every((asked) => missingOf(asked) === 0);
  }
  switch (step) {
    case 'pictures':
      return (['released', 'applied'] as const).every((needed) => viewOf(measurement, needed) !== null);
    case 'reference':
      return Object.entries(references).some(([kind, reference]) => kind !== 'pinEnd' && reference !== null);
    case 'chamber':
      return wheelEnd.chamber !== null;
    case 'over-stroke':
      return overStrokeMark.released !== null && overStrokeMark.applied !== null;
    default:
      return false;
  }
}
