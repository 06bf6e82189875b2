import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { BoardPicture } from '../../adjustment/board-fit.ts';
import { boardPictureOf } from '../../adjustment/board-sights.ts';
import { type Calibration, type CalibrationFailure, showsEnough } from '../../adjustment/calibrate.ts';
import type { Result } from '../../basics/result.ts';
import { workerClient } from '../measuring/worker-client.ts';
import { type BoardPhoto, camera } from './camera-store.ts';

export type Calibrated = Result<Calibration, CalibrationFailure>;
type Used = { readonly photo: BoardPhoto; readonly picture: BoardPicture };

const calibrateApart = workerClient<readonly BoardPicture[], Calibrated>(
  () => new Worker(new URL('./calibrate.worker.ts', import.meta.url), { type: 'module' }),
);

export type ShownCalibration = {
  /** The photos that show enough of the board, in the order of the result. */
  readonly used: readonly BoardPhoto[];
  /** Null while photos are searched, while it is computed, and where no photo was searched yet. */
  readonly calibrated: Calibrated | null;
};

export function useCalibration(): ShownCalibration {
  const photos = useStore(camera, (state) => state.photos);
  const settled =
    photos.length > 0 && photos.every(({ search }) => search.is === 'done' || search.is === 'failed');
  const used = useMemo(() => (settled ? photos.flatMap(usedOf) : []), [settled, photos]);
  const [answer, setAnswer] = useState<{
    readonly of: readonly Used[];
    readonly calibrated: Calibrated;
  } | null>(null);
  useEffect(() => {
    if (!settled) return;
    calibrateApart(
      used.map(({ picture }) => picture),
      (calibrated) => setAnswer({ of: used, calibrated }),
    );
  }, [settled, used]);
  return {
    used: used.map(({ photo }) => photo),
    calibrated: settled && answer?.of === used ? answer.calibrated : null,
  };
}

function usedOf(photo: BoardPhoto): readonly Used[] {
  if (photo.search.is !== 'done') return [];
  const { sighting } = photo.search;
  const picture = boardPictureOf(sighting, sighting.corners);
  return showsEnough(picture.sights) ? [{ photo, picture }] : [];
}
