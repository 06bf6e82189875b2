/** What `measure` prints: one object per measurement of a record. Full precision: rounding is for people. */
import { degFromRad } from '../basics/units.ts';
import type { Measured } from '../measurement/measured.ts';
import type { MeasurementInput } from '../record/measurement-input.ts';
import type { InspectionRecord } from '../record/record.ts';
import { type Assessment, assess } from '../record/results.ts';
import type { WheelEnd } from '../record/wheel-end.ts';

export type MeasuredRow = {
  readonly record: string;
  readonly wheelEnd: string;
  readonly measurement: string;
  readonly purpose: MeasurementInput['purpose'];
  readonly stroke_mm: number | null;
  readonly U95_mm: number | null;
  readonly armAngleReleased_deg: number | null;
  readonly armAngleReleased_U95_deg: number | null;
  readonly armAngleApplied_deg: number | null;
  readonly armAngleApplied_U95_deg: number | null;
  readonly freeStroke_mm: number | null;
  readonly freeStroke_U95_mm: number | null;
  readonly limit_mm: number | null;
  readonly finding: Assessment['finding']['outcome'];
  /** Codes: of the measurement, of why it is not decided, of the limit, of an over-stroke mark that disagrees. */
  readonly warnings: readonly string[];
};

export function measuredRows(record: InspectionRecord): MeasuredRow[] {
  return record.wheelEnds.flatMap((wheelEnd) =>
    wheelEnd.measurements.map((measurement) =>
      measuredRow(record, wheelEnd, measurement, assess(record, wheelEnd, measurement)),
    ),
  );
}

export function measuredRow(
  record: InspectionRecord,
  { position }: WheelEnd,
  { id, purpose }: MeasurementInput,
  { measurement, finding }: Assessment,
): MeasuredRow {
  const result = measurement.ok ? measurement.value : null;
  const released = inDegrees(result?.armAngleReleasedRad);
  const applied = inDegrees(result?.armAngleAppliedRad);
  return {
    record: record.id,
    wheelEnd: `axle ${position.axle} ${position.side}`,
    measurement: id,
    purpose,
    stroke_mm: result?.strokeMm.value ?? null,
    U95_mm: result?.strokeMm.U95 ?? null,
    armAngleReleased_deg: released?.value ?? null,
    armAngleReleased_U95_deg: released?.U95 ?? null,
    armAngleApplied_deg: applied?.value ?? null,
    armAngleApplied_U95_deg: applied?.U95 ?? null,
    freeStroke_mm: result?.freeStrokeMm?.value ?? null,
    freeStroke_U95_mm: result?.freeStrokeMm?.U95 ?? null,
    limit_mm: finding.limit?.values[0].limitMm ?? null,
    finding: finding.outcome,
    warnings: warningCodes({ measurement, finding }),
  };
}

function warningCodes({ measurement, finding }: Assessment): string[] {
  const reasons = finding.reasons.flatMap((reason) =>
    'failure' in reason ? [reason.failure.code] : [reason.code],
  );
  const all = [
    ...(measurement.ok ? measurement.value.warnings : []).map((warning) => warning.code),
    ...reasons,
    ...(finding.limit?.notes ?? []).map((note) => note.code),
    ...finding.notes.map((note) => note.code).filter((code) => code !== 'roadside-count/counts'),
  ];
  return [...new Set(all)];
}

function inDegrees(angle: Measured | null | undefined): { value: number; U95: number } | null {
  return angle ? { value: degFromRad(angle.value), U95: degFromRad(angle.U95) } : null;
}
