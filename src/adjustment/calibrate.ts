/**
 * A camera's focal length, principal point and distortion from pictures of the calibration board.
 *
 * Model    least squares over all corners of all pictures (board-equations.ts); covariance (J^T J)^-1, multiplied by
 *          chi-square over its degrees of freedom where that is above one.
 * Assumes  one focal setting in all pictures; a board that stays as it is; corner errors independent of each other.
 * Fails    'too-few-pictures', 'few-corners', 'sizes-differ' before the fit; after it 'no-agreement' where it does not settle or corners
 *          lie far off (zoomed between pictures, a board that moved in its frame), 'same-direction' where the focal length is
 *          not held: of a board seen square on, distance and focal length cannot be told apart.
 * Source   Z. Zhang: A flexible new technique for camera calibration, MSR-TR-98-71 (the plan; its closed start is not used)
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { CameraProfile } from '../captures/camera-profile.ts';
import type { BoardSight } from './board-equations.ts';
import { type BoardPicture, fitOf, scatterOf, sightsOf, uncertaintiesOf } from './board-fit.ts';

export type Calibration = Omit<CameraProfile, 'id' | 'name' | 'madeAt'> & {
  /** Root mean square distance of its corners, by picture. */
  readonly pictureRmsPx: readonly number[];
};

export type CalibrationFailure =
  | { readonly code: 'calibrate/too-few-pictures'; readonly count: number; readonly least: number }
  | {
      readonly code: 'calibrate/few-corners';
      readonly picture: number;
      readonly count: number;
      readonly least: number;
    }
  | {
      readonly code: 'calibrate/sizes-differ';
      readonly picture: number;
      readonly widthPx: number;
      readonly heightPx: number;
      readonly firstWidthPx: number;
      readonly firstHeightPx: number;
    }
  | { readonly code: 'calibrate/same-direction'; readonly uLnFocal: number; readonly most: number }
  | { readonly code: 'calibrate/no-agreement'; readonly rmsPx: number; readonly mostPx: number };

export const LEAST_PICTURES = 8;
/** A pose has six unknowns; with a dozen corners it is held by more than itself. */
const LEAST_CORNERS = 12;
/** Less than a third of what the file's own note of the focal length gives. */
const MOST_U_LN_FOCAL = 0.01;
/** Of the longer side, or a pixel: a camera that this model fits stays well below it. */
const MOST_RMS_SHARE = 0.0005;

/** Whether a picture shows enough of the board to say where it is. */
export function showsEnough(sights: readonly BoardSight[]): boolean {
  const lines = (of: (sight: BoardSight) => number) => new Set(sights.map(of)).size;
  return sights.length >= LEAST_CORNERS && lines((s) => s.xMm) >= 3 && lines((s) => s.yMm) >= 3;
}

export function calibrate(pictures: readonly BoardPicture[]): Result<Calibration, CalibrationFailure> {
  const fault = pictureFault(pictures);
  if (fault) return fail(fault);
  const { widthPx, heightPx } = pictures[0] as BoardPicture;
  const longer = Math.max(widthPx, heightPx);
  const mostPx = Math.max(1, MOST_RMS_SHARE * longer);
  const fitted = fitOf(pictures, longer, mostPx);
  const { pictureRmsPx, rmsPx } = scatterOf(fitted, pictures);
  const us = rmsPx <= mostPx ? uncertaintiesOf(fitted) : null;
  if (!us) return fail({ code: 'calibrate/no-agreement', rmsPx, mostPx });
  const [uLnFocal, uCxPx, uCyPx, uK1, uK2] = us as [number, number, number, number, number];
  if (!(uLnFocal <= MOST_U_LN_FOCAL))
    return fail({ code: 'calibrate/same-direction', uLnFocal, most: MOST_U_LN_FOCAL });
  if (!fitted.converged) return fail({ code: 'calibrate/no-agreement', rmsPx, mostPx });
  const [lnF, cxPx, cyPx, k1, k2] = fitted.x as unknown as [number, number, number, number, number];
  return ok({
    ...{ widthPx, heightPx, focalPx: Math.exp(lnF), uLnFocal, cxPx, cyPx, uCxPx, uCyPx, k1, uK1, k2, uK2 },
    ...{ rmsPx, pictureRmsPx, photoCount: pictures.length, cornerCount: sightsOf(pictures).length },
  });
}

function pictureFault(pictures: readonly BoardPicture[]): CalibrationFailure | null {
  const count = pictures.length;
  if (count < LEAST_PICTURES) return { code: 'calibrate/too-few-pictures', count, least: LEAST_PICTURES };
  const few = pictures.findIndex(({ sights }) => !showsEnough(sights));
  if (few >= 0) {
    const { length } = (pictures[few] as BoardPicture).sights;
    return { code: 'calibrate/few-corners', picture: few, count: length, least: LEAST_CORNERS };
  }
  const { widthPx: firstWidthPx, heightPx: firstHeightPx } = pictures[0] as BoardPicture;
  const other = pictures.findIndex((p) => p.widthPx !== firstWidthPx || p.heightPx !== firstHeightPx);
  if (other < 0) return null;
  const { widthPx, heightPx } = pictures[other] as BoardPicture;
  return { code: 'calibrate/sizes-differ', picture: other, widthPx, heightPx, firstWidthPx, firstHeightPx };
}
