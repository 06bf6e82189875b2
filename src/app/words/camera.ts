/** The calibrated camera: how it is made, what was found, and why not. */
import type { CalibrationFailure } from '../../adjustment/calibrate.ts';
import type { CameraProfile } from '../../captures/camera-profile.ts';
import type { BoardSearchFailure } from '../camera/camera-store.ts';
import { captureFailureText } from './failures-captures.ts';
import { dayText } from './values.ts';

export const CAMERA = {
  title: 'Camera',
  sentence:
    'Eight or more photos of a printed board tell the focal length of your camera and how its lens bends lines.',
  back: 'Back',
  open: 'Calibrate a camera',
  print: 'Print the board at 100 %',
  printHint:
    'Measure its two check lines with a steel rule: both must be the same. Glue it on a stiff, flat plate.',
  papers: { a4: 'A4', letter: 'US Letter' },
  newTab: 'opens in a new tab',
  take: 'Take the photos',
  takeHow: [
    'The camera, lens, zoom and picture size of the brake’s pictures, in focus at their distance.',
    'The board fills half of the picture or more, and reaches its edges and corners in some photos.',
    'Tilt the board by 20° to 45°, another way in each photo. Hold the camera upright in some, on its side in others.',
    'No glare, nothing over the board, nothing moves.',
  ],
  choose: 'Choose 8 or more photos',
  more: 'Add photos',
  photos: 'Photos of the board',
  leaveOut: 'Leave out',
  leaveOutOf: (fileName: string) => `Leave out ${fileName}`,
  clear: 'Leave out all',
  working: 'Calculating …',
  result: 'Result',
  noPromise:
    'It holds for pictures of this size at this zoom. How much better a stroke becomes depends on pictures, marks and references; nothing is promised.',
  name: 'Name of the camera',
  keep: 'Keep this camera',
  keepAndUse: 'Keep and use it for this measurement',
  kept: 'Cameras kept on this device',
  keptNone: 'None yet.',
  forget: 'Remove',
  forgetOf: (name: string) => `Remove ${name} from this device`,
  chooser: 'Camera',
  chooserHint: 'A calibrated one is known better than from the picture’s own note.',
  none: 'Not calibrated',
  noneHint: 'Focal length from the picture’s own note, else a usual phone camera.',
};

export const progressText = (number: number, count: number) =>
  `Looking for the board: photo ${number} of ${count} …`;

export const usualName = ({ widthPx, heightPx }: Pick<CameraProfile, 'widthPx' | 'heightPx'>, day: string) =>
  `Camera ${widthPx} × ${heightPx}, ${day.slice(0, 10)}`;

export const sizeOf = ({ widthPx, heightPx }: Pick<CameraProfile, 'widthPx' | 'heightPx'>) =>
  `${widthPx} × ${heightPx} px`;

/** A relative uncertainty is rounded up. */
const percent = (share: number) => `${(Math.ceil(share * 1e4 - 1e-9) / 100).toFixed(2)} %`;
const upPx = (px: number) => (Math.ceil(px * 10 - 1e-9) / 10).toFixed(1);

const focalText = ({ focalPx, uLnFocal }: CameraProfile | Pick<CameraProfile, 'focalPx' | 'uLnFocal'>) =>
  `focal length ${focalPx.toFixed(0)} px, u ${percent(uLnFocal)}`;

export const keptCameraText = (profile: CameraProfile) =>
  `${sizeOf(profile)}, ${focalText(profile)}, ${dayText(profile.madeAt)}`;

type Values = Omit<CameraProfile, 'id' | 'name' | 'madeAt'>;

export const RESULT_ROWS: readonly { readonly name: string; readonly text: (values: Values) => string }[] = [
  {
    name: 'Focal length',
    text: ({ focalPx, uLnFocal }) =>
      `${focalPx.toFixed(1)} px, u ${upPx(focalPx * uLnFocal)} px (${percent(uLnFocal)})`,
  },
  {
    name: 'Middle of the lens',
    text: ({ cxPx, cyPx, uCxPx, uCyPx }) =>
      `x ${cxPx.toFixed(1)}, y ${cyPx.toFixed(1)} px, u ${upPx(Math.max(uCxPx, uCyPx))} px`,
  },
  { name: 'Distortion k1', text: ({ k1, uK1 }) => `${signed(k1)}, u ${uDistortion(uK1)}` },
  { name: 'Distortion k2', text: ({ k2, uK2 }) => `${signed(k2)}, u ${uDistortion(uK2)}` },
  { name: 'Corners off the calibration', text: ({ rmsPx }) => `${rmsPx.toFixed(2)} px (root mean square)` },
  { name: 'From', text: ({ photoCount, cornerCount }) => `${cornerCount} corners in ${photoCount} photos` },
  { name: 'Picture size', text: sizeOf },
];

const signed = (k: number) => `${k < 0 ? '−' : '+'}${Math.abs(k).toFixed(4)}`;
const uDistortion = (u: number) => (Math.ceil(u * 1e4 - 1e-9) / 1e4).toFixed(4);

export const cornersText = (found: number, all: number) => `${found} of ${all} corners`;
export const tooFewCornersText = (found: number, all: number) =>
  found === 0 ? 'Board not found.' : `Too little of the board: ${found} of ${all} corners.`;
export const offText = (rmsPx: number) => `${rmsPx.toFixed(2)} px off`;
export const SEARCHES = { waiting: 'waiting', 'under-way': 'searching …' };

/** Said in the chooser before it is chosen, too. */
export const fitsText = (fitting: number, count: number, profile: CameraProfile) =>
  fitting === count
    ? null
    : `Made for pictures of ${sizeOf(profile)}: ${fitting === 0 ? 'the pictures here are' : 'one picture here is'} of another size, where a usual lens is taken instead.`;

export function calibrationFailureText(
  failure: CalibrationFailure,
  chosen: number,
  names: readonly string[],
): string {
  switch (failure.code) {
    case 'calibrate/too-few-pictures':
      return `The board was found in ${failure.count} of ${chosen} photos; ${failure.least} are needed. Add photos in which the board is large, sharp and without glare.`;
    case 'calibrate/few-corners':
      return `${names[failure.picture] ?? ''} shows too little of the board. Leave it out.`;
    case 'calibrate/sizes-differ':
      return `${names[failure.picture] ?? ''} is ${failure.widthPx} × ${failure.heightPx} pixels, others are ${failure.firstWidthPx} × ${failure.firstHeightPx}. All must come from one camera at one picture size: leave out those that differ.`;
    case 'calibrate/same-direction':
      return `All photos look at the board from nearly the same direction, which leaves the focal length open by ${percent(failure.uLnFocal)}; ${percent(failure.most)} is allowed. Add photos with the board tilted by 20° to 45°, to the left, to the right, up and down.`;
    case 'calibrate/no-agreement':
      return `The photos do not agree on one camera: corners lie ${failure.rmsPx.toFixed(1)} px off; ${failure.mostPx.toFixed(1)} px is allowed. Perhaps the zoom changed between them, or the board bent. Take them anew.`;
  }
}

export function boardFailureText(failure: BoardSearchFailure): string {
  switch (failure.code) {
    case 'camera/not-a-photo':
      return 'A clip. Take photos: clips have another picture size.';
    case 'vision/forbidden':
      return 'This page’s server does not let the search start. Tell whoever keeps the server.';
    case 'vision/not-loaded':
      return 'The search program did not arrive. Load it once with a network; after that it works without.';
    case 'vision/not-started':
      return `The search did not start within ${failure.limitS} seconds. Try again with a better network.`;
    case 'vision/stalled':
      return `The search did not end within ${failure.limitS} seconds. Close other programs and choose the photo again.`;
    case 'vision/parts-missing':
    case 'vision/opencv-failed':
      return 'The search broke off. Close other programs and choose the photo again.';
    default:
      return captureFailureText(failure);
  }
}
