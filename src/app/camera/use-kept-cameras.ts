import { useCallback, useEffect, useState } from 'react';
import type { CameraProfile } from '../../captures/camera-profile.ts';
import { listCameras } from '../storage/kept-cameras.ts';
import { notices } from '../stores.ts';
import { storageFailureText } from '../words/failures-storage.ts';

/** The cameras kept on this device, and the way to read them anew. */
export function useKeptCameras(): readonly [readonly CameraProfile[], () => Promise<void>] {
  const [kept, setKept] = useState<readonly CameraProfile[]>([]);
  const list = useCallback(async () => {
    const listed = await listCameras();
    if (listed.ok) setKept(listed.value);
    else notices.tell('storage', storageFailureText(listed.failure));
  }, []);
  useEffect(() => void list(), [list]);
  return [kept, list];
}
