import type { CameraProfile } from '../../captures/camera-profile.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Target } from './actions.ts';

/** The record holds the profiles that a measurement of it uses, and no others. */
export function applyCameraProfile(
  record: InspectionRecord,
  target: Target,
  profile: CameraProfile | null,
): InspectionRecord {
  const wheelEnds = record.wheelEnds.map((wheelEnd) =>
    wheelEnd.id !== target.wheelEndId
      ? wheelEnd
      : {
          ...wheelEnd,
          measurements: wheelEnd.measurements.map((measurement) =>
            measurement.id === target.measurementId
              ? { ...measurement, cameraProfileId: profile?.id ?? null }
              : measurement,
          ),
        },
  );
  const used = new Set(
    wheelEnds.flatMap(({ measurements }) => measurements.map((measurement) => measurement.cameraProfileId)),
  );
  const others = record.cameraProfiles.filter(({ id }) => id !== profile?.id);
  const cameraProfiles = [...others, ...(profile ? [profile] : [])].filter(({ id }) => used.has(id));
  return { ...record, wheelEnds, cameraProfiles };
}
