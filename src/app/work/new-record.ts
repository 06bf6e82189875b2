import type { InspectionRecord, MeasurementInput, WheelEnd } from '../../record/record.ts';
import { RECORD_FORMAT, RECORD_VERSION } from '../../record/record.ts';
import { NO_REFERENCES } from '../../references/reference.ts';

export type NewRecordFacts = {
  readonly newId: () => string;
  readonly createdAt: string;
  readonly unit: string;
  readonly ruleSetId: string;
};

/** A record with one wheel end and one empty measurement, as found. */
export function newRecord({ newId, createdAt, unit, ruleSetId }: NewRecordFacts): InspectionRecord {
  return {
    format: RECORD_FORMAT,
    version: RECORD_VERSION,
    id: newId(),
    createdAt,
    vehicle: { unit },
    ruleSetId,
    captures: [],
    cameraProfiles: [],
    wheelEnds: [newWheelEnd(newId)],
  };
}

function newWheelEnd(newId: () => string): WheelEnd {
  return {
    id: newId(),
    position: { axle: 1, side: 'left' },
    chamber: null,
    measurements: [newMeasurement(newId)],
  };
}

function newMeasurement(newId: () => string): MeasurementInput {
  return {
    id: newId(),
    purpose: 'as-found',
    cameraStill: false,
    cameraProfileId: null,
    views: [],
    references: NO_REFERENCES,
    followed: null,
    overStrokeMark: { released: null, applied: null },
  };
}
