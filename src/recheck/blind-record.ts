/**
 * A record for a second reader: the same frames, references and chamber, and nothing that the first reader marked, read or
 * concluded. It names the package by its id, so that the two find each other again.
 */
import type { MeasurementInput } from '../record/measurement-input.ts';
import type { InspectionRecord } from '../record/record.ts';
import type { WheelEnd } from '../record/wheel-end.ts';

/** Half of the manifest's hash is more than enough to tell packages apart, and an id is short. */
export function blindRecordId(manifestSha256: string): string {
  return `second-${manifestSha256.slice(0, 32)}`;
}

export function blindRecord(
  first: InspectionRecord,
  manifestSha256: string,
  createdAt: string,
): InspectionRecord {
  return {
    ...first,
    id: blindRecordId(manifestSha256),
    createdAt,
    inspector: { name: '', qualification: '' },
    wheelEnds: first.wheelEnds.map(withoutFindings),
    review: null,
    history: [{ at: createdAt, by: '', act: 'started', place: '', stateSha256: null, chainSha256: null }],
  };
}

function withoutFindings({
  id,
  position,
  chamber,
  identification,
  adjuster,
  measurements,
}: WheelEnd): WheelEnd {
  return {
    id,
    position,
    chamber,
    identification,
    adjuster,
    adjusterCheck: null,
    measurements: measurements.map(withoutMarks),
    handReadings: [],
    otherReadings: [],
    causeAnswers: [],
    repairs: [],
    notes: '',
    photos: [],
  };
}

function withoutMarks(measurement: MeasurementInput): MeasurementInput {
  return {
    ...measurement,
    views: measurement.views.map((view) => ({ ...view, marks: [] })),
    followed: null,
    overStrokeMark: { released: null, applied: null, bandColour: null },
  };
}
