/** What is measured on: what the place points at in the record. */
import type { BrakeState, View } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import type { Place } from './place.ts';
import type { OpenWork } from './work-store.ts';

export type Current = {
  readonly record: InspectionRecord;
  readonly wheelEnd: WheelEnd;
  readonly measurement: MeasurementInput;
  readonly place: Place;
};

export function currentOf({ history, place }: Pick<OpenWork, 'history' | 'place'>): Current | null {
  const record = history.present;
  if (place.screen !== 'measuring') return null;
  const wheelEnd = record.wheelEnds.find(({ id }) => id === place.target.wheelEndId);
  const measurement = wheelEnd?.measurements.find(({ id }) => id === place.target.measurementId);
  return wheelEnd && measurement ? { record, wheelEnd, measurement, place } : null;
}

export function viewOf({ views }: Pick<MeasurementInput, 'views'>, state: BrakeState): View | null {
  return views.find((view) => view.state === state) ?? null;
}
