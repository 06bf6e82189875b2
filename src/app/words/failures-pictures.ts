import type { PictureFailure } from '../media/picture-of.ts';
import { captureFailureText } from './failures-captures.ts';

/** Why a picture of the record cannot be shown. */
export function pictureFailureText(failure: PictureFailure): string {
  switch (failure.code) {
    case 'frames/no-such-frame':
      return `The clip has no frame ${failure.index + 1}. Take another frame of it.`;
    case 'frames/not-decoded':
      return `Frame ${failure.index + 1} of the clip is damaged. Take a frame beside it.`;
    case 'frames/decoder-stalled':
      return `This browser did not show frame ${failure.index + 1} within ${failure.limitS} seconds. Close other programs and take it again.`;
    case 'frames/not-readable':
      return 'The file can no longer be read, or this device has no room for the picture. Close other programs, then choose the file again.';
    default:
      return captureFailureText(failure);
  }
}
