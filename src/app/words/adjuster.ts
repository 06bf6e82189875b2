/** The check of an automatic adjuster: what it means, and what pictures of a wrench on its hex say. Facts: docs/rules.md. */
import type { AdjusterAnswer, AdjusterReason, BackedOff } from '../../finding/adjuster-decision.ts';
import type { AdjusterTurnFailure } from '../../measurement/adjuster-turn.ts';
import { measuredAngleText } from './values.ts';

/** Short: three stand side by side. */
export const ADJUSTER_ANSWERS: Readonly<Record<AdjusterAnswer, string>> = {
  'takes-up': 'Takes up',
  'does-not-take-up': 'Does not',
  'cannot-tell': 'Cannot tell',
};

export const ADJUSTER = {
  kind: 'Kind of adjuster',
  sentence:
    'Does it take up by itself? Back the hex off by a quarter to half a turn first; a ratchet noise is normal. Then have the brake applied fully and released, again and again, up to twelve times. The hex must creep back in steps, and the stroke must shrink to normal.',
  caution:
    'Chocks in place, hands out while the brake is applied. Back off only the brake under test, and no brake that is out of adjustment already, unless it is that one.',
  applications: 'Full applications made',
  fewer: 'One application fewer',
  more: 'One application more',
  answer: 'What the hex did',
  takesUp:
    'It takes up: go on until the stroke is normal, and measure the stroke. Still too long: the fault is elsewhere.',
  noRepair:
    'Turning an automatic adjuster by hand is no repair: it hides the cause and wears the clutch, and the brake soon goes out again. Where it does not take up, find the cause or replace it.',
} as const;

export const WRENCH = {
  heading: 'Pictures of the wrench',
  how: 'Leave a wrench on the hex and never take it off between the pictures. Brake released: take a picture straight at the end of the hex. First one before any application, then one after every two or so.',
  backedOff: 'To back it off, the wrench was turned (as the pictures show it)',
  still: 'The camera stands on something and stays there',
  stillHint: 'The arm is marked all the same: it shows whether the camera stood. By hand the turn is rough.',
  notToTheLast: (made: number, last: number) =>
    `${made} applications made; the last picture is from after ${last}: what the wrench did since is not known.`,
  moved: 'By the marks of hex and arm the camera moved, or a mark is off: the turn is read as by hand.',
  putOver:
    'Not known within 3°: the pictures do not tell how slanted they look at the hex. Without another application, put the wrench over on the hex by a third of a turn (two flats) to one side, then to the other, as drawn broken, and take a picture of each; after a clip, two short clips. Where there is no room, as far round as it goes. Mark the same spots.',
  putOverMore:
    'Still not known within 3°. Without another application, put the wrench over on the hex once more, to point where no picture shows it yet, best the opposite way, and take one more picture. Mark the same spots.',
  stand:
    'Not known within 3°: a hand does not come back to the same place. Set the camera up so that it stays, say so above, and begin anew.',
  clip: 'Hex, arm and wrench are followed frame by frame; the applications are counted by the push rod’s own motion. A picture of every rest comes of it.',
  clipTaken:
    'This clip is followed: a picture of every rest is in the list. To follow it anew, take the others out first.',
  clipNeeds: 'Choose a frame with the brake released and mark all four.',
  add: 'Take a picture or a clip now',
  full: (most: number) =>
    `The check keeps ${most} pictures of the wrench, and it has them. Take one out, then add the other again.`,
  picture: (number: number, applications: number) =>
    `Picture ${number}, after ${applications} application${applications === 1 ? '' : 's'}`,
  toMark: 'to be marked',
  marked: 'marked',
  allMarked: 'All four are marked.',
  marksGone: 'The marks belong to the frame before and went with it. Undo brings both back.',
  fewer: 'One application fewer before this picture',
  more: 'One application more before this picture',
  before: 'Applications before this picture',
  drop: 'Take this picture out',
  close: 'Close',
  frame: 'Place in the clip',
  missing: 'The file of this picture is not on this device.',
  clock: 'The wrench as a clock’s hand',
  first: 'first',
  last: 'last',
  differs: (answer: string) => `The pictures say: ${answer}. You say otherwise; both are kept.`,
} as const;

export const BACKED_OFF_NAMES: Readonly<Record<BackedOff, string>> = {
  'counter-clockwise': 'Counter-clockwise',
  clockwise: 'Clockwise',
};

export const WRENCH_POINTS = ['centre', 'tip', 'camshaft', 'pin'] as const;
type WrenchPoint = (typeof WRENCH_POINTS)[number];

export const WRENCH_POINT_NAMES: Readonly<Record<WrenchPoint, string>> = {
  centre: 'Middle of the hex',
  tip: 'Far end of the wrench',
  camshaft: 'Camshaft end',
  pin: 'Clevis pin',
};

export const WRENCH_POINT_ASKED: Readonly<Record<WrenchPoint, string>> = {
  centre: 'Tap the middle of the hex.',
  tip: 'Tap a spot far out on the wrench, on its flat: the same spot in every picture.',
  camshaft: 'Tap the end of the camshaft, in the middle.',
  pin: 'Tap the end of the clevis pin, in the middle.',
};

export const DECIDED: Readonly<Record<AdjusterAnswer, string>> = {
  'takes-up': 'Takes up',
  'does-not-take-up': 'Does not take up',
  'cannot-tell': 'Cannot tell',
};

type Turned = { readonly value: number; readonly u: number };

export function turnText({ value, u }: Turned): string {
  const shown = { value: Math.abs(value), U95: 1.96 * u };
  return `${measuredAngleText(shown)} ${value < 0 ? 'counter-clockwise' : 'clockwise'}`;
}

export const inAllText = (applications: number) =>
  `in ${applications} application${applications === 1 ? '' : 's'}`;

export const eachText = (turned: Turned) => `${turnText(turned)} in each`;

export function reasonText(reason: AdjusterReason): string {
  switch (reason) {
    case 'adjuster/few-applications':
      return 'Too few applications: two that turn the wrench, or four that do not.';
    case 'adjuster/near-least-turn':
      return 'About 5° or less, or too uncertain. More applications; pictures straight at the hex, from a camera that stays.';
    case 'adjuster/direction-not-said':
      return 'It turned. Say which way it was backed off: taking up is the other way.';
    case 'adjuster/turned-off':
      return 'The wrench went on in the direction of backing off. That is not taking up: did it slip or fall?';
    case 'adjuster/too-fast':
      return 'More than 30° in an application is no creeping: the wrench was put on anew, or moved. Leave it on and begin anew.';
    case 'adjuster/went-back':
      return 'The wrench went forth and back between the pictures. Put it on firmly and begin anew.';
  }
}

export function turnFailureText(failure: AdjusterTurnFailure): string {
  switch (failure.code) {
    case 'adjuster-turn/too-few':
      return 'Two marked pictures with applications between them tell the turn.';
    case 'adjuster-turn/no-arm':
      return 'A camera that turned looks like a wrench that did: mark the camshaft end and the clevis pin in every picture.';
    case 'adjuster-turn/short':
      return `The wrench is too short in the picture after ${failure.applicationsBefore} applications. Mark a spot farther out, or go nearer.`;
    case 'adjuster-turn/lengths-differ':
      return 'The wrench is longer in one picture than another can explain: mark the same spot of it in every picture.';
    case 'adjuster-turn/put-over':
      return `The wrench points elsewhere in two pictures after ${failure.applicationsBefore} applications. Put it over only after the last application.`;
    case 'adjuster-turn/too-far':
      return `Near half a turn up to the picture after ${failure.applicationsBefore} applications: which way it went cannot be told. Take a picture more often.`;
  }
}
