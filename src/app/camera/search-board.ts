import { fail, ok, type Result } from '../../basics/result.ts';
import { FIRST_BYTES, isPhotoType, mediaTypeOf } from '../../captures/media-type.ts';
import { BOARD_CORNERS_MM, BOARD_MARKERS, SQUARE_MM } from '../../references/calibration-board.ts';
import { vision } from '../media/vision.ts';
import type { BoardSearchFailure, BoardSighting } from './camera-store.ts';

const PLAN = { squareMm: SQUARE_MM, markers: BOARD_MARKERS, cornersMm: BOARD_CORNERS_MM };
/** Wide enough to see where the corners are. */
const SMALL_PX = 360;

/** Rejects with an AbortError where the signal ends it. */
export async function searchBoard(
  file: File,
  signal: AbortSignal,
): Promise<Result<BoardSighting, BoardSearchFailure>> {
  const kind = mediaTypeOf(new Uint8Array(await file.slice(0, FIRST_BYTES).arrayBuffer()));
  if (!kind.ok) return kind;
  if (!isPhotoType(kind.value)) return fail({ code: 'camera/not-a-photo' });
  const { photoPicture } = await import('../../captures/photo-picture.browser.ts');
  const opened = await photoPicture({ blob: file, mediaType: kind.value, signal });
  if (!opened.ok) return opened;
  const { picture, upright } = opened.value;
  const { width: widthPx, height: heightPx } = picture;
  const scale = Math.min(1, SMALL_PX / Math.max(widthPx, heightPx));
  const small = await createImageBitmap(picture, {
    resizeWidth: Math.max(1, Math.round(widthPx * scale)),
    resizeHeight: Math.max(1, Math.round(heightPx * scale)),
    resizeQuality: 'medium',
  }).catch(() => null);
  if (!small) {
    picture.close();
    return fail({ code: 'captures/not-drawn', widthPx, heightPx });
  }
  try {
    const seen = await (await vision()).findBoard(picture, PLAN, signal);
    if (seen.ok) {
      const { rotationDeg } = upright;
      return ok({ widthPx, heightPx, rotationDeg, corners: seen.value.corners, small });
    }
    small.close();
    return seen;
  } catch (thrown) {
    small.close();
    throw thrown;
  }
}
