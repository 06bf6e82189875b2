import type { BrakeState } from '../../marks/view.ts';
import type { Step } from '../work/steps.ts';

/** One short word each: they stand in the step strip of a narrow phone. */
export const STEP_NAMES: Readonly<Record<Step, string>> = {
  pictures: 'Pictures',
  reference: 'Reference',
  'marks-released': 'Released',
  'marks-applied': 'Applied',
  'marks-pulled': 'Pulled',
  chamber: 'Chamber',
  'over-stroke': 'Over-stroke',
  finding: 'Finding',
};

export const STEP_TITLES: Readonly<Record<Step, string>> = {
  pictures: 'Pictures of the brake',
  reference: 'What of known size is in the picture',
  'marks-released': 'Marks on the released picture',
  'marks-applied': 'Marks on the applied picture',
  'marks-pulled': 'Marks on the pulled picture',
  chamber: 'Chamber',
  'over-stroke': 'Over-stroke mark',
  finding: 'Finding',
};

const NEXT: Readonly<Record<Step, string>> = {
  pictures: 'pictures',
  reference: 'what is of known size',
  'marks-released': 'marks on the released picture',
  'marks-applied': 'marks on the applied picture',
  'marks-pulled': 'marks on the pulled picture',
  chamber: 'the chamber',
  'over-stroke': 'the over-stroke mark',
  finding: 'the finding',
};

export const stepLabel = (number: number, step: Step, done: boolean) =>
  `Step ${number}: ${STEP_TITLES[step]}${done ? ', done' : ''}`;
export const nextStep = (step: Step) => `Next: ${NEXT[step]}`;
export const goToStep = (step: Step) => `Go to ${NEXT[step]}`;
export const STEPS_LABEL = 'Steps of the work';

export const PICTURES = {
  sentence:
    'Choose a picture with the brake released and one with the brake applied, or one clip that shows both.',
  choose: 'Choose photos or a clip',
  more: 'Choose other pictures',
  orDrop: 'You can also drop files on this page or paste a picture.',
  swap: 'Swap released and applied',
  still: 'The camera stood still between the pictures (tripod, magnet)',
  stillHint: 'Only if nobody touched it: then both pictures share one camera position.',
  takeAs: (state: BrakeState) => `Take as ${state}`,
  takeItAs: 'not taken yet: take it as',
  notTaken: 'nothing taken from it yet',
  takenIs: (at: string) => `taken: ${at}`,
  taken: (state: BrakeState) => `taken as ${state}`,
  takenAt: (state: BrakeState, at: string) => `taken as ${state} at ${at}`,
  none: 'no picture yet',
  look: 'Look through the clip',
  files: 'Files of this record',
  tapeInBoth: 'Tape along the rod in both: on to the marks',
  tapeInClip: 'Tape held still along the rod: on to the marks',
  marksGone: 'The marks of the picture before went with it. Undo brings both back.',
};

export const CLIP = {
  played:
    'This browser shows the clip in its player only: each frame is sought by its time, and the clip cannot be followed. Take a released and an applied frame, or use another browser.',
  opening: 'Opening the clip …',
  picture: (fileName: string) => `Clip ${fileName}`,
  position: 'Position in the clip',
  frameOf: (index: number, count: number) => `frame ${index + 1} of ${count}`,
  step: (frames: number) =>
    `${Math.abs(frames)} frame${Math.abs(frames) === 1 ? '' : 's'} ${frames < 0 ? 'back' : 'on'}`,
  sentence:
    'Find the brake released and take it. The applied picture comes of it when the clip is followed, or find it fully applied and held, and take that too.',
  sentencePlayed: 'Find the brake released and take it, then find it fully applied and held, and take that.',
  end: 'Show what is taken',
};

export const REFERENCE = {
  sentence: 'Tick everything of known size that both pictures show. Several together are better than one.',
  tape: 'Tape along the rod',
  tapeHint:
    'Its numerals are read where they can be. Else you mark one or two graduations, far apart; those between are found.',
  zeroAtFace: 'The tape’s zero sits on the chamber face',
  unmoved: 'The tape lay in the same place in both pictures',
  unmovedHint: 'As in one clip, or held by a magnet. Not if it was held anew.',
  touchesPin: 'The blade lies on the end of the clevis pin',
  touchesPinHint: 'Then the reading at the pin does not depend on where the camera stood.',
  clampBand: 'Clamp band of the chamber',
  clampBandHint: 'You will mark points round its rim.',
  bandByTable: 'published for this type (u 1.0 mm)',
  bandByCaliper: 'Or typed from a caliper (u 0.3 mm)',
  bandNeedsType: 'Choose the chamber type in step “Chamber” to take the diameter from the table, or type it.',
  bandUnknown: 'Diameter not known: its rim shows only the direction of view',
  pinEnd: 'How far the clevis pin’s end stands out',
  pinEndHint:
    'Square out from the rod’s middle line to the end that is marked. No scale of its own; it sharpens the others.',
  pinEndLength: 'Measured with a rule (u 1.5 mm)',
  arm: 'Arm length, camshaft to clevis pin',
  armHint: 'You will mark the end of the camshaft.',
  armStamped: 'Stamped on the arm (u 0.8 mm)',
  armOther: 'Another length',
  distance: 'Another known distance near the rod',
  distanceHint: 'You will mark its two ends.',
  distanceLength: 'Distance (u 0.5 mm)',
};

export const OVER_STROKE = {
  sentence: 'Is the paint band of the over-stroke mark to be seen where the rod leaves the chamber?',
  seen: 'Seen',
  'not-seen': 'Not seen',
  'cannot-tell': 'Cannot tell',
  crop: 'Frame the place on the picture',
  cropping: 'Drag a frame round the place where the rod leaves the chamber.',
  cropAgain: 'Frame the place anew',
  note: 'The paint never decides: it may show up to 3.8 mm (0.15 in) before the limit, on older chambers after it.',
};

export const MISSING = {
  heading: 'Pictures to bring back',
  sentence:
    'This record was made with pictures that are not on this device. Choose these files; each is recognised by its content.',
  choose: 'Choose the files',
  picture: (label: string) => `${label}: not on this device`,
};
