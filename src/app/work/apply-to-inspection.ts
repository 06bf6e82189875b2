import type { InspectionRecord } from '../../record/record.ts';
import { MOST_AXLES } from '../../record/vehicle.ts';
import type { InspectionAction } from './actions.ts';
import { newWheelEnd } from './new-record.ts';

export function applyToInspection(record: InspectionRecord, action: InspectionAction): InspectionRecord {
  const { vehicle } = record;
  switch (action.type) {
    case 'set-vehicle':
      return { ...record, vehicle: { ...vehicle, ...action.vehicle } };
    case 'add-axle': {
      if (vehicle.axles.length >= MOST_AXLES) return record;
      const axle = vehicle.axles.length + 1;
      const [left, right] = action.wheelEndIds;
      return {
        ...record,
        vehicle: { ...vehicle, axles: [...vehicle.axles, { kind: action.kind }] },
        wheelEnds: [
          ...record.wheelEnds,
          newWheelEnd(left, { axle, side: 'left' }),
          newWheelEnd(right, { axle, side: 'right' }),
        ],
      };
    }
    case 'add-wheel-end':
      return { ...record, wheelEnds: [...record.wheelEnds, newWheelEnd(action.id, action.position)] };
    case 'set-axle-kind': {
      const axles = vehicle.axles.map((axle, i) => (i + 1 === action.axle ? { kind: action.kind } : axle));
      return { ...record, vehicle: { ...vehicle, axles } };
    }
    case 'remove-axle':
      return removeAxle(record, action.axle);
    case 'set-conditions':
      return { ...record, conditions: { ...record.conditions, ...action.conditions } };
    case 'set-inspector':
      return { ...record, inspector: { ...record.inspector, ...action.inspector } };
    case 'set-review':
      return { ...record, review: action.review };
    case 'add-capture':
      return record.captures.some(({ id }) => id === action.capture.id)
        ? record
        : { ...record, captures: [...record.captures, action.capture] };
  }
}

function removeAxle(record: InspectionRecord, removed: number): InspectionRecord {
  return {
    ...record,
    vehicle: { ...record.vehicle, axles: record.vehicle.axles.filter((_, i) => i + 1 !== removed) },
    wheelEnds: record.wheelEnds
      .filter(({ position }) => position.axle !== removed)
      .map((wheelEnd) => {
        const { axle, side } = wheelEnd.position;
        return axle > removed ? { ...wheelEnd, position: { axle: axle - 1, side } } : wheelEnd;
      }),
  };
}
