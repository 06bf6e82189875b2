import { isAnythingEntered } from '../../record/anything-entered.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import type { Action, Target } from './actions.ts';
import { applyCameraProfile } from './apply-camera-profile.ts';
import { applyToInspection } from './apply-to-inspection.ts';
import { applyToMeasurement } from './apply-to-measurement.ts';
import { applyToWheelEnd } from './apply-to-wheel-end.ts';
import { withAxles } from './new-record.ts';

/** The record after the action. The record given is left as it was. */
export function applyAction(record: InspectionRecord, target: Target, action: Action): InspectionRecord {
  switch (action.type) {
    case 'set-vehicle':
    case 'add-axle':
    case 'add-wheel-end':
    case 'set-axle-kind':
    case 'remove-axle':
    case 'set-conditions':
    case 'set-inspector':
    case 'set-review':
    case 'add-capture':
      return applyToInspection(record, action);
    case 'set-position':
      return setPosition(record, target, action.position);
    case 'set-chamber':
    case 'set-wheel-end':
    case 'set-identification':
    case 'answer-check':
    case 'put-line':
    case 'drop-line':
    case 'add-measurement':
    case 'drop-measurement':
      return withWheelEnd(record, target, (wheelEnd) => applyToWheelEnd(wheelEnd, action));
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

/**
 * A vehicle has one brake at a place: a record with two would not open again. A wheel end of which nothing is known makes room
 * by taking the other's place; one with anything entered stays where it is.
 */
function setPosition(
  record: InspectionRecord,
  target: Target,
  position: WheelEnd['position'],
): InspectionRecord {
  const moved = record.wheelEnds.find(({ id }) => id === target.wheelEndId);
  if (!moved) return record;
  const there = record.wheelEnds.find(
    ({ id, position: { axle, side } }) => id !== moved.id && axle === position.axle && side === position.side,
  );
  if (there && isAnythingEntered(there)) return record;
  const wheelEnds = record.wheelEnds.map((wheelEnd) => {
    if (wheelEnd === moved) return { ...wheelEnd, position };
    return wheelEnd === there ? { ...wheelEnd, position: moved.position } : wheelEnd;
  });
  return { ...record, vehicle: withAxles(record.vehicle, position.axle), wheelEnds };
}
