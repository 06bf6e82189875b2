import type { Conditions } from '../../record/conditions.ts';
import type { MeasurementInput, Purpose } from '../../record/measurement-input.ts';
import { type InspectionRecord, RECORD_FORMAT, RECORD_VERSION } from '../../record/record.ts';
import type { Vehicle } from '../../record/vehicle.ts';
import { MOST_AXLES } from '../../record/vehicle.ts';
import type { Position, WheelEnd } from '../../record/wheel-end.ts';
import { NO_REFERENCES } from '../../references/reference.ts';

export type NewRecordFacts = {
  readonly id: string;
  readonly createdAt: string;
  readonly unit: string;
  readonly ruleSetId: string;
};

const NO_CONDITIONS: Conditions = {
  wheelsChocked: null,
  engineOff: null,
  springBrakesReleased: null,
  fullApplication: null,
  drumsCold: null,
  procedure: 'roadside',
  pressureBeforeKpa: null,
  pressureHeldKpa: null,
  gaugeCaptureId: null,
};

/** A record of a vehicle of which nothing is known yet. */
export function newRecord({ id, createdAt, unit, ruleSetId }: NewRecordFacts): InspectionRecord {
  return {
    format: RECORD_FORMAT,
    version: RECORD_VERSION,
    id,
    createdAt,
    vehicle: { unit, kind: null, serialNumber: '', owner: '', axles: [] },
    inspector: { name: '', qualification: '' },
    conditions: NO_CONDITIONS,
    ruleSetId,
    captures: [],
    cameraProfiles: [],
    wheelEnds: [],
    review: null,
    history: [{ at: createdAt, by: '', act: 'started', place: '', stateSha256: null, chainSha256: null }],
  };
}

/** With at least this many axles; those added are of a kind not said. */
export function withAxles(vehicle: Vehicle, atLeast: number): Vehicle {
  const missing = Math.min(atLeast, MOST_AXLES) - vehicle.axles.length;
  if (missing <= 0) return vehicle;
  return {
    ...vehicle,
    axles: [...vehicle.axles, ...Array.from({ length: missing }, () => ({ kind: null }))],
  };
}

export function newWheelEnd(id: string, position: Position): WheelEnd {
  return {
    id,
    position,
    chamber: null,
    identification: { portBoss: null, tag: null, marking: '', brake: null, captureId: null },
    adjuster: null,
    adjusterCheck: null,
    measurements: [],
    handReadings: [],
    otherReadings: [],
    causeAnswers: [],
    repairs: [],
    notes: '',
    photos: [],
  };
}

export function newMeasurement(id: string, purpose: Purpose): MeasurementInput {
  return {
    id,
    purpose,
    cameraStill: false,
    cameraProfileId: null,
    views: [],
    references: NO_REFERENCES,
    followed: null,
    overStrokeMark: { released: null, applied: null, bandColour: null },
  };
}
