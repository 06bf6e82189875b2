/** Where the person is in the work. Kept beside the record, so that a return opens where it was left; never part of it. */
import type { MarkKind } from '../../marks/mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Target } from './actions.ts';
import type { HandKind } from './asked-marks.ts';
import { markedState, type Step } from './steps.ts';

const SCREENS = ['inspection', 'wheel-end', 'measuring', 'report'] as const;
export type Screen = (typeof SCREENS)[number];

export type Place = {
  readonly screen: Screen;
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

/** A record of one measurement opens at it, any other at the whole inspection. */
export function firstPlace({ wheelEnds }: InspectionRecord): Place {
  const measured = wheelEnds.filter(({ measurements }) => measurements.length > 0);
  const only = measured.length === 1 ? measured[0] : undefined;
  const measurement = only?.measurements.length === 1 ? only.measurements[0] : undefined;
  return {
    screen: measurement ? 'measuring' : 'inspection',
    target: { wheelEndId: only?.id ?? null, measurementId: measurement?.id ?? null },
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
    shown: state ?? (step === 'over-stroke' ? 'applied' : place.shown),
    selectedMarkId: null,
    pickedKind: null,
    onceMore: false,
    typedReadingMm: null,
    cropping: null,
    passedOver: state === null || state === markedState(place.step) ? place.passedOver : [],
    chooser: step === 'pictures' ? place.chooser : null,
  };
}

/** Where a kept place no longer fits the record (another wheel end, an older app), the nearest one that does. */
export function fittingPlace(record: InspectionRecord, place: Place | null): Place {
  if (place === null || !SCREENS.includes(place.screen)) return firstPlace(record);
  if (place.screen === 'inspection' || place.screen === 'report') return place;
  const wheelEnd = record.wheelEnds.find(({ id }) => id === place.target.wheelEndId);
  if (!wheelEnd) return { ...firstPlace(record), screen: 'inspection' };
  const measured = wheelEnd.measurements.some(({ id }) => id === place.target.measurementId);
  if (measured || place.screen === 'wheel-end') return place;
  return { ...place, screen: 'wheel-end', target: { wheelEndId: wheelEnd.id, measurementId: null } };
}
