import type { Capture } from '../../captures/capture.ts';
import type { Current } from './current.ts';

/** The captures that may be meant for this measurement: its own, and those that nothing else in the record uses. */
export function capturesHere({
  record,
  measurement,
}: Pick<Current, 'record' | 'measurement'>): readonly Capture[] {
  const own = new Set(measurement.views.map(({ captureId }) => captureId));
  const elsewhere = new Set<string | null>([
    record.conditions.gaugeCaptureId,
    ...record.wheelEnds.flatMap(({ measurements, identification, photos, adjusterCheck }) => [
      identification.captureId,
      ...photos.map(({ captureId }) => captureId),
      ...(adjusterCheck?.turns ?? []).map(({ captureId }) => captureId),
      ...measurements
        .filter(({ id }) => id !== measurement.id)
        .flatMap(({ views }) => views.map(({ captureId }) => captureId)),
    ]),
  ]);
  return record.captures.filter(({ id }) => own.has(id) || !elsewhere.has(id));
}
