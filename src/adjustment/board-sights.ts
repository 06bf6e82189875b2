/** What a photo shows of the calibration board, as a calibration takes it: in pixels of the picture as stored. */
import type { Capture } from '../captures/capture.ts';
import { storedPlaces } from '../captures/stored-place.ts';
import { BOARD_CORNERS_MM } from '../references/calibration-board.ts';
import type { BoardPicture } from './board-fit.ts';

export type FoundBoardCorner = {
  readonly corner: number;
  readonly xPx: number;
  readonly yPx: number;
  readonly sigmaPx: number;
};

export function boardPictureOf(
  photo: Pick<Capture, 'widthPx' | 'heightPx' | 'rotationDeg'>,
  corners: readonly FoundBoardCorner[],
): BoardPicture {
  const { size, place } = storedPlaces(photo);
  return {
    ...size,
    sights: corners.flatMap(({ corner, sigmaPx, ...upright }) => {
      const onBoard = BOARD_CORNERS_MM[corner];
      if (!onBoard) return [];
      const [[xMm, yMm], [xPx, yPx]] = [onBoard, place(upright.xPx, upright.yPx)];
      return [{ xMm, yMm, xPx, yPx, sigmaPx }];
    }),
  };
}
