/**
 * Focal length in pixels before the adjustment, with an honest width.
 *
 * Model    f = f35 / 43.267 mm x diagonal of the picture (px): the 35 mm equivalent is defined by the diagonal of a 36 x 24 mm frame.
 * Assumes  with EXIF: 3.5 %, since makers round to whole millimetres, some go by the width instead of the diagonal (4 % on 4:3),
 *          and focusing near changes it by a few percent. Without: a phone's main camera, 26 mm for photos and 28 mm for clips
 *          (cut for steadying), 25 %.
 * Source   CIPA DC-008 / EXIF 2.3, tag FocalLengthIn35mmFilm (from memory); widths: common practice, no source.
 */
import type { Capture } from '../captures/capture.ts';
import type { CameraPrior } from './problem.ts';

const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);
const TYPICAL_35_MM = { photo: 26, clip: 28 } as const;

export function focalPrior(
  capture: Pick<Capture, 'kind' | 'widthPx' | 'heightPx' | 'focal35Mm'>,
): Pick<CameraPrior, 'focalPx' | 'uLnFocal'> {
  const { kind, widthPx, heightPx, focal35Mm } = capture;
  const known = focal35Mm !== null;
  const focalPx =
    ((focal35Mm ?? TYPICAL_35_MM[kind]) / FULL_FRAME_DIAGONAL_MM) * Math.hypot(widthPx, heightPx);
  return { focalPx, uLnFocal: known ? 0.035 : 0.25 };
}
