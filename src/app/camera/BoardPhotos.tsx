import { boardPictureOf } from '../../adjustment/board-sights.ts';
import { showsEnough } from '../../adjustment/calibrate.ts';
import { BOARD_CORNERS_MM } from '../../references/calibration-board.ts';
import {
  boardFailureText,
  CAMERA,
  cornersText,
  offText,
  SEARCHES,
  tooFewCornersText,
} from '../words/camera.ts';
import { type BoardPhoto, type BoardSearch, camera } from './camera-store.ts';
import { SmallPicture } from './SmallPicture.tsx';
import type { ShownCalibration } from './use-calibration.ts';

type Props = { readonly photos: readonly BoardPhoto[]; readonly shown: ShownCalibration };

export function BoardPhotos({ photos, shown: { used, calibrated } }: Props) {
  if (photos.length === 0) return null;
  const offOf = (photo: BoardPhoto) =>
    calibrated?.ok ? calibrated.value.pictureRmsPx[used.indexOf(photo)] : undefined;
  return (
    <ul className="board-photos" aria-label={CAMERA.photos}>
      {photos.map((photo) => {
        const { text, wanting } = sightText(photo.search, offOf(photo));
        return (
          <li key={photo.id}>
            {photo.search.is === 'done' ? <SmallPicture sighting={photo.search.sighting} /> : null}
            <p className="file-name">{photo.file.name}</p>
            <p className={wanting ? 'look' : 'quiet'}>{text}</p>
            <button
              type="button"
              className="button"
              aria-label={CAMERA.leaveOutOf(photo.file.name)}
              onClick={() => camera.leaveOut(photo.id)}
            >
              {CAMERA.leaveOut}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function sightText(
  search: BoardSearch,
  rmsPx: number | undefined,
): { readonly text: string; readonly wanting: boolean } {
  if (search.is === 'failed') return { text: boardFailureText(search.failure), wanting: true };
  if (search.is !== 'done') return { text: SEARCHES[search.is], wanting: false };
  const { corners } = search.sighting;
  const [found, all] = [corners.length, BOARD_CORNERS_MM.length];
  if (!showsEnough(boardPictureOf(search.sighting, corners).sights))
    return { text: tooFewCornersText(found, all), wanting: true };
  const off = rmsPx === undefined ? '' : `, ${offText(rmsPx)}`;
  return { text: `${cornersText(found, all)}${off}`, wanting: false };
}
