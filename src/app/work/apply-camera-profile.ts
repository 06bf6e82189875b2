import type { CameraProfile } from '../../captures/camera-profile.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { Target } from './actions.ts';

/** A profile stays in the record when it is no longer chosen: it may have come with it and be nowhere else. */
export function applyCameraProfile(
  record: InspectionRecord,
  target: Target,
  profile: CameraProfile | null,
): InspectionRecord {
  const known = profile === null || record.cameraProfiles.some(({ id }) => id === profile.id);
  return {
    ...record,
    cameraProfiles: known ? record.cameraProfiles : [...record.cameraProfiles, profile],
    wheelEnds: record.wheelEnds.map((wheelEnd) =>
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
    ),
  };
}
