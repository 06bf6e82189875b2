/** The words of the shell. Steps, marks, cautions, values and failures have their own files beside this one. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { BrakeState } from '../../marks/view.ts';

export const APP_NAME = 'Strokewitness';
export const APP_SENTENCE = 'Measures push rod stroke from a released and an applied picture.';
export const AID_LINE =
  'An aid to the eye, no certified inspection. Local rules, the maker’s procedure and qualified inspectors decide.';

export const FIRST = {
  ways: 'Begin',
  inspect: 'Start an inspection',
  inspectHint: 'The vehicle with all its wheel ends.',
  start: 'Start with pictures',
  startHint: 'Choose two photos or one clip of one wheel end, or drop them on this page.',
  demoHeading: 'Try it on the demo trailer',
  demoInspection: 'Open the demo inspection',
  demo: 'Or mark one wheel end yourself:',
  demoHint: 'A county road department’s gravel trailer. Unit invented, pictures drawn by computer.',
  openRecord: 'Open a saved record',
  more: 'Demo, files and camera',
  earlier: 'Earlier inspections on this device',
  earlierAll: (count: number) => `Show all ${count}`,
  earlierSearch: 'Search by unit, name or date (2026-05)',
  earlierNoneFits: 'None of them fits. Type less.',
  earlierNone: 'None yet. Work is kept on this device as you go.',
  forget: (unit: string) => `Remove ${unit} from this device`,
  forgetAsk: (unit: string) =>
    `Remove “${unit}” with its pictures from this device? A saved record file stays where you saved it.`,
  forgetYes: 'Remove',
  busy: 'Reading the pictures …',
};

export const DEMO_NAMES = {
  'pair-tape': 'Photos with a tape',
  'clip-tape': 'Clip with a tape',
  'pair-band': 'Photos, clamp band',
} as const;

/** A record may be without a unit name. */
export const unitText = (unit: string) => unit.trim() || 'Unit not named';

export const DEMO_UNREACHABLE =
  'The demo pictures did not arrive. They are not kept on this device: try again with a network.';

export const PLACELESS =
  'The pictures are in the record, but belong to no wheel end yet. Touch the wheel end that they show, and add them there.';

export const photosFullText = (most: number) =>
  `A wheel end keeps ${most} photos, and it has them. Take one out, then add the other again.`;

export const workTitle = (unit: string) => `${APP_NAME}: ${unitText(unit)}`;

export const BAR = {
  label: 'Record',
  close: 'All inspections',
  undo: 'Undo',
  redo: 'Redo',
  saveRecord: 'Save record',
  cautions: 'Cautions',
  skip: 'Go to the work',
};

export const UNIT_NAMES: Readonly<Record<LengthUnit, string>> = {
  fraction: 'inch fractions',
  'decimal-inch': 'decimal inches',
  mm: 'millimetres',
};

export const STATE_NAMES: Readonly<Record<BrakeState, string>> = {
  released: 'Released',
  applied: 'Applied',
  pulled: 'Pulled',
};

export const PICTURE_LABELS: Readonly<Record<BrakeState, string>> = {
  released: 'Released picture',
  applied: 'Applied picture',
  pulled: 'Pulled picture',
};

export const TITLE_BLOCK = {
  heading: 'Title block',
  unit: 'Unit',
  position: 'Wheel end',
  axle: 'Axle',
  side: 'Side',
  left: 'Left',
  right: 'Right',
  chamber: 'Chamber',
  limit: 'Adjustment limit',
  arm: 'Arm length',
  reference: 'Reference',
  dimensions: 'Dimensions in',
  stroke: 'Stroke',
  freeStroke: 'Free stroke',
  straight: 'Straight line, face to pin',
  angleReleased: 'Arm angle, released',
  angleApplied: 'Arm angle, applied',
  finding: 'Finding',
  none: 'not given',
  notYet: 'not yet',
  notHeld: 'not yet: it needs more marks',
};

export const CRASH = {
  heading: 'Something in the program broke',
  kept: 'What you entered is still here. Save the record to a file, then load the page again.',
  reload: 'Load the page again',
  went: 'Something in the program broke just now. What you entered is still here: save the record to a file, then load the page again.',
};

export const NEW_VERSION = {
  isHere: 'A newer version of the program is here. What is kept on this device stays.',
  take: 'Use it now',
};

export const DROP_HERE = 'Drop photos, a clip or a record';
export const CLOSE = 'Close';
export const CANCEL = 'Cancel';
export const PICTURE_SWITCH = 'Picture shown';
export const BRAKE_DRAWING =
  'Sketch of an S-cam brake: the push rod moves the clevis pin along the chamber’s axis; that travel is the stroke.';
export const BRAKE_DRAWING_STROKE = 'stroke';
