import type { CaptureFailure } from '../../captures/capture-failure.ts';

/** What happened and what to do, for a file that does not become a picture. */
export function captureFailureText(failure: CaptureFailure): string {
  switch (failure.code) {
    case 'captures/empty-file':
      return 'The file is empty (0 bytes). Copy it from the camera again.';
    case 'captures/not-readable':
      return 'The file could not be read. If it lies in a cloud folder, download it to this device first.';
    case 'captures/not-a-picture':
      return failure.brand === null
        ? 'This is no photo or clip, whatever its name says. Choose the file that the camera made.'
        : `This is no photo or clip (inside it says “${failure.brand}”). Choose the file that the camera made.`;
    case 'captures/damaged':
      return damagedText(failure.part);
    case 'captures/codec-not-decoded':
      return `This browser cannot show ${failure.codec}. Record with the camera set to “most compatible” (H.264), or open the file in another browser.`;
    case 'captures/no-video-track':
      return 'The file holds no moving picture, perhaps sound only. Choose the clip that shows the brake.';
    case 'captures/too-many-pixels':
      return `The picture is ${failure.widthPx} × ${failure.heightPx} pixels, more than can be worked on here. Save it at half the size and choose that.`;
    case 'captures/not-drawn':
      return `This device has no room for a picture of ${failure.widthPx} × ${failure.heightPx} pixels now. Close other programs and choose the file again, or save it at half the size.`;
    case 'captures/photo-too-big':
      return `The photo is ${megabytes(failure.sizeBytes)} MB; up to ${megabytes(failure.limitBytes)} MB can be read. Choose the camera’s JPEG.`;
    case 'captures/decoder-stalled':
      return `This browser did not show the picture within ${failure.limitS} seconds. Close other programs and choose the file again.`;
    case 'captures/not-the-recorded-file':
      return `The file opens but is not the one in the record: ${FACTS[failure.fact]} is ${failure.found}, recorded was ${failure.recorded}. Choose the original file.`;
  }
}

function damagedText(part: 'index' | 'end' | 'picture'): string {
  switch (part) {
    case 'index':
      return 'The file is damaged at its table of contents. Copy it from the camera again.';
    case 'end':
      return 'The file is cut off before its end. Copy it from the camera again and wait until the copy is complete.';
    case 'picture':
      return 'The picture inside the file is damaged. Copy it from the camera again, or take another picture.';
  }
}

const FACTS = {
  kind: 'its kind',
  width: 'its width',
  height: 'its height',
  'frame-count': 'its number of frames',
  clock: 'its clock',
} as const;

const megabytes = (bytes: number) => Math.ceil(bytes / 1e6);
