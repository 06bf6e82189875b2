/** Calibrated cameras kept on this device, newest first. */
import type { Result } from '../../basics/result.ts';
import { type CameraProfile, cameraProfileSchema } from '../../captures/camera-profile.ts';
import { database } from './database.ts';
import { attempt, type StorageFailure } from './storage-failure.ts';

export function keepCamera(profile: CameraProfile): Promise<Result<void, StorageFailure>> {
  return attempt(async () => {
    await (await database()).put('cameras', profile);
  });
}

/** One that another version of the app wrote and this one does not understand is left out. */
export function listCameras(): Promise<Result<readonly CameraProfile[], StorageFailure>> {
  return attempt(async () => {
    const all = await (await database()).getAll('cameras');
    return all
      .flatMap((each) => cameraProfileSchema.safeParse(each).data ?? [])
      .sort((a, b) => b.madeAt.localeCompare(a.madeAt));
  });
}

export function dropCamera(id: string): Promise<Result<void, StorageFailure>> {
  return attempt(async () => (await database()).delete('cameras', id));
}
