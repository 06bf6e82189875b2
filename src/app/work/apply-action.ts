import type { InspectionRecord, WheelEnd } from '../../record/record.ts';
import type { Action, Target } from './actions.ts';
import { applyCameraProfile } from './apply-camera-profile.ts';
import { applyToMeasurement } from './apply-to-measurement.ts';

/** The record after the action. The record given is left as it was. */
export function applyAction(record: InspectionRecord, target: Target, action: Action): InspectionRecord {
  switch (action.type) {
    case 'set-unit':
      return { ...record, vehicle: { ...record.vehicle, unit: action.unit } };
    case 'add-capture':
      return record.captures.some(({ id }) => id === action.capture.id)
        ? record
        : { ...record, captures: [...record.captures, action.capture] };
    case 'set-position':
      return isTaken(record, target, action.position)
        ? record
        : withWheelEnd(record, target, (wheelEnd) => ({ ...wheelEnd, position: action.position }));
    case 'set-chamber':
      return withWheelEnd(record, target, (wheelEnd) => ({ ...wheelEnd, chamber: action.chamber }));
    case 'set-camera-profile':
      return applyCameraProfile(record, target, action.profile);
    default:
      return withWheelEnd(record, target, (wheelEnd) => ({
        ...wheelEnd,
        measurements: wheelEnd.measurements.map((measurement) =>
          measurement.id === target.measurementId ? applyToMeasurement(measurement, action) : measurement,
        ),
      }));
  }
}

function withWheelEnd(
  record: InspectionRecord,
  target: Target,
  change: (wheelEnd: WheelEnd) => WheelEnd,
): InspectionRecord {
  return {
    ...record,
    wheelEnds: record.wheelEnds.map((wheelEnd) =>
      wheelEnd.id === target.wheelEndId ? change(wheelEnd) : wheelEnd,
    ),
  };
}

/** A vehicle has one brake at a place: a record with two would not open again. */
function isTaken(
  { wheelEnds }: InspectionRecord,
  target: Target,
  { axle, side }: WheelEnd['position'],
): boolean {
  return wheelEnds.some(
    ({ id, position }) => id !== target.wheelEndId && position.axle === axle && position.side === side,
  );
}
