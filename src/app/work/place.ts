/** Where the person is in the work. Kept beside the record, so that a return opens where it was left; never part of it. */
import type { MarkKind } from '../../marks/mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Target } from './actions.ts';
import type { HandKind } from './asked-marks.ts';
import { markedState, type Step } from './steps.ts';

export type Place = {
  readonly target: Target;
  readonly step: Step;
  /** Which picture is seen where only one has room. */
  readonly shown: BrakeState;
  readonly selectedMarkId: string | null;
  /** A kind of mark chosen by hand from the list; null asks in order. */
  readonly pickedKind: HandKind | null;
  /** The mark placed next is one more setting of a kind that else has one only: they count together. */
  readonly onceMore: boolean;
  readonly passedOver: readonly MarkKind[];
  /** A tape reading typed for the next graduation; null takes the proposed one. */
  readonly typedReadingMm: number | null;
  /** The picture on which a frame for the over-stroke mark is being drawn. */
  readonly cropping: 'released' | 'applied' | null;
  /** The clip that is being looked through, and where in it. */
  readonly chooser: { readonly captureId: string; readonly frameIndex: number } | null;
};

export function firstPlace(record: InspectionRecord): Place | null {
  const wheelEnd = record.wheelEnds[0];
  const measurement = wheelEnd?.measurements[0];
  if (!wheelEnd || !measurement) return null;
  return {
    target: { wheelEndId: wheelEnd.id, measurementId: measurement.id },
    step: 'pictures',
    shown: 'released',
    selectedMarkId: null,
    pickedKind: null,
    onceMore: false,
    passedOver: [],
    typedReadingMm: null,
    cropping: null,
    chooser: null,
  };
}

export function atStep(place: Place, step: Step): Place {
  const state = markedState(step);
  return {
    ...place,
    step,
    shown: state ?? place.shown,
    selectedMarkId: null,
    pickedKind: null,
    onceMore: false,
    typedReadingMm: null,
    cropping: null,
    passedOver: state === null || state === markedState(place.step) ? place.passedOver : [],
    chooser: step === 'pictures' ? place.chooser : null,
  };
}

/** Where a kept place no longer fits the record (another wheel end, an older app), the first one does. */
export function fittingPlace(record: InspectionRecord, place: Place | null): Place | null {
  const wheelEnd = record.wheelEnds.find(({ id }) => id === place?.target.wheelEndId);
  const fits = wheelEnd?.measurements.some(({ id }) => id === place?.target.measurementId);
  return fits ? place : firstPlace(record);
}
