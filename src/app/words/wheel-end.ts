/** The words of one wheel end's sheet. */
import type { Purpose } from '../../record/measurement-input.ts';
import type { AdjusterKind } from '../../record/repair.ts';
import type { HandReading, Identification, OtherReading } from '../../record/wheel-end.ts';

export const PURPOSE_NAMES: Readonly<Record<Purpose, string>> = {
  'as-found': 'As found',
  'after-repair': 'After repair',
};

export const ADJUSTER_NAMES: Readonly<Record<AdjusterKind, string>> = {
  automatic: 'Automatic',
  manual: 'Manual',
  'cannot-tell': 'Cannot tell',
};

export const WHEEL_END = {
  measure: 'Measure from pictures',
  measureHint: 'A released and an applied photo, or one clip of the application.',
  measureAgain: 'Measure once more',
  measured: (number: number) => `Pictures and marks ${number}`,
  byHand: 'by hand',
  powerStroke: 'Power stroke (stroke minus free stroke)',
  difference: 'Pictures minus tape by hand',
  way: 'Round the vehicle',
  trend: 'Earlier strokes of this wheel end',
  now: 'now',
  chamber: 'Chamber',
  adjuster: 'Adjuster',
  readings: 'Play, lining and other readings',
  cause: 'Look for the cause',
  repair: 'Repair',
  notes: 'Notes and photos',
  notesLabel: 'Notes',
  addPhoto: 'Add photos',
  caption: (number: number) => `What photo ${number} shows`,
  dropPhoto: (number: number) => `Take photo ${number} out`,
  none: 'none',
  nothing: 'nothing yet',
} as const;

export const HAND = {
  add: 'Enter a tape reading',
  quantity: 'What was measured',
  stroke: 'Stroke',
  'free-stroke': 'Free stroke',
  way: 'How',
  two: 'Two readings from one fixed point of the chamber',
  one: 'The difference alone',
  released: 'Reading, released',
  applied: 'Reading, applied',
  pulled: 'Reading, pulled to lining contact',
  difference: 'Stroke as read',
  graduation: 'The tape is read to',
  done: 'Note the reading',
  order:
    'The applied reading is smaller than the released one. The rod comes out when the brake is applied: check both.',
  drop: 'Remove the reading',
  text: (quantity: HandReading['quantity'], value: string) =>
    `${quantity === 'stroke' ? 'Stroke' : 'Free stroke'} by hand ${value}`,
  between: (released: string, applied: string) => `${released} to ${applied}`,
} as const;

export const OTHER = {
  add: 'Enter a reading',
  what: 'What was measured',
  name: 'Name it',
  value: 'Reading',
  limit: 'Limit',
  limitIs: 'The limit is',
  limitSource: 'Whose limit it is',
  limitHint: 'Makers differ: take it from the maker’s manual.',
  done: 'Note the reading',
  drop: 'Remove the reading',
  over: 'past its limit',
  within: 'within its limit',
  noLimit: 'no limit given',
} as const;

export const OTHER_NAMES: Readonly<Record<OtherReading['what'], string>> = {
  'camshaft-play': 'Camshaft play in its bushings',
  'adjuster-end-play': 'End play of the adjuster',
  'lining-thickness': 'Lining thickness',
  'drum-diameter': 'Drum diameter',
  other: 'Another reading',
};

export const LIMIT_IS: Readonly<Record<OtherReading['limitIs'], string>> = {
  greatest: 'the most allowed',
  least: 'the least allowed',
};

export const LOOKS = {
  heading: 'What the chamber shows',
  portBoss: 'Boss of the air port',
  tag: 'Tag on a clamp bolt',
  brake: 'Brake',
  marking: 'Letters and numbers on the housing',
  photo: 'Photo of what proves it',
  photoAdd: 'Add a photo of the mark',
  photoDrop: 'Take the photo out',
} as const;

export const PORT_BOSS_NAMES: Readonly<Record<NonNullable<Identification['portBoss']>, string>> = {
  round: 'Round',
  square: 'Square',
  'cannot-tell': 'Cannot tell',
};

export const TAG_NAMES: Readonly<Record<NonNullable<Identification['tag']>, string>> = {
  none: 'None',
  trapezoid: 'Trapezoid',
  'cannot-tell': 'Cannot tell',
};

export const BRAKE_NAMES: Readonly<Record<NonNullable<Identification['brake']>, string>> = {
  service: 'Service only',
  spring: 'With spring brake',
  'cannot-tell': 'Cannot tell',
};

export const REPAIR = {
  add: 'Enter a repair',
  heading: 'Repair',
  cause: 'Cause found',
  causeNone: 'not said',
  work: 'What was done, with torques and clearances',
  parts: 'Parts, one to a line',
  newAdjuster: 'Adjuster on the brake now',
  adjustedByHand: 'The adjuster was turned by hand to bring the stroke in',
  setFreeStroke: 'Free stroke set to',
  done: 'Note the repair',
  change: 'Change',
  drop: 'Remove',
  by: (name: string, day: string) => (name ? `${name}, ${day}` : day),
} as const;
