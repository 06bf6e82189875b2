/** The printed target: what is said about it, and why it was not found. */
import type { BrakeState } from '../../marks/view.ts';
import type { VisionFailure } from '../../vision/vision-failure.ts';
import type { SearchFailure } from '../target/target-store.ts';
import { STATE_NAMES } from './en.ts';
import { pictureFailureText } from './failures-pictures.ts';

export const TARGET = {
  name: 'Printed target',
  hint: 'A strip of coded markers, laid along the rod. Its corners are found in the pictures by themselves.',
  print: 'Print it at 100 %',
  papers: { a4: 'A4', letter: 'US Letter' },
  newTab: 'opens in a new tab',
  check: 'Its check line measures (u 0.3 mm)',
  checkHint:
    'Nominally 100 mm (3.94 in). Measure it on your print with a steel rule; write mm after it if the rule shows millimetres.',
  unmoved: 'The strip lay in the same place in both pictures',
  unmovedHint: 'Fixed to what stands still, as by a magnet. Not if it was held anew, or fixed to the rod.',
  touchesPin: 'The strip lies on the end of the clevis pin',
  touchesPinHint: 'Then the place of the pin does not depend on where the camera stood.',
  sights: 'What was found in the pictures',
  again: 'Search again',
  whatToDo:
    'The strip must be in view whole, sharp, flat and without glare, nothing over it, each marker 30 pixels wide or more. Take the picture anew, or use another reference.',
};

const picture = (state: BrakeState) => `${STATE_NAMES[state]} picture`;

export const targetSightText = {
  noPicture: (state: BrakeState) => `${picture(state)}: none yet.`,
  underWay: (state: BrakeState) => `${picture(state)}: searching …`,
  waiting: (state: BrakeState) => `${picture(state)}: not searched yet.`,
  notMarked: (state: BrakeState) => `${picture(state)}: no corner of it is marked.`,
  none: (state: BrakeState) => `${picture(state)}: the target was not found.`,
  /** Markers are numbered from 0 in the code, from 1 on the screen. */
  found: (state: BrakeState, count: number, missing: readonly number[]) => {
    const all = count + missing.length;
    if (missing.length === 0) return `${picture(state)}: all ${all} markers found.`;
    const names = missing.map((marker) => marker + 1).join(', ');
    return `${picture(state)}: ${count} of ${all} markers found. Not found, counted from the left: ${names}. They may be covered, blurred or in glare.`;
  },
  failed: (state: BrakeState, failure: SearchFailure) => `${picture(state)}: ${searchFailureText(failure)}`,
};

function searchFailureText(failure: SearchFailure): string {
  return isVisionFailure(failure) ? visionFailureText(failure) : pictureFailureText(failure);
}

const isVisionFailure = (failure: SearchFailure): failure is VisionFailure =>
  failure.code.startsWith('vision/');

function visionFailureText(failure: VisionFailure): string {
  switch (failure.code) {
    case 'vision/forbidden':
      return 'this page’s server does not let the search start. Use another reference, and tell whoever keeps the server.';
    case 'vision/not-loaded':
      return 'the search program did not arrive. Try again with a network; after that it works without.';
    case 'vision/not-started':
      return `the search did not start within ${failure.limitS} seconds. Try again with a better network.`;
    case 'vision/stalled':
      return `the search did not end within ${failure.limitS} seconds. Close other programs and search again, or use another reference.`;
    case 'vision/parts-missing':
    case 'vision/opencv-failed':
      return 'the search broke off. Close other programs and search again, or use another reference.';
  }
}
