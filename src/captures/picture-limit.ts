/** The largest picture that is opened: a 50-megapixel phone photo passes and takes 200 MB while it is open; a page has little more. */
import type { CaptureFailure } from './capture-failure.ts';
import type { SizePx } from './upright.ts';

const MAX_PICTURE_PX = 64_000_000;

/** The failure where the picture is larger than the limit, null where it is not. */
export function tooManyPixels({ widthPx, heightPx }: SizePx): CaptureFailure | null {
  return widthPx * heightPx <= MAX_PICTURE_PX
    ? null
    : { code: 'captures/too-many-pixels', widthPx, heightPx, limitPx: MAX_PICTURE_PX };
}
