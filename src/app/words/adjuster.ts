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
    'Back the hex off a little, then have the brake applied fully and released, again and again. The hex must creep round in steps and the stroke must shrink.',
  caution:
    'Chocks in place, hands out while the brake is applied. Only on the brake under test, and never on one that is already out of adjustment otherwise.',
  applications: 'Full applications made',
  fewer: 'One application fewer',
  more: 'One application more',
  answer: 'What the hex did',
  noRepair:
    'Turning an automatic adjuster by hand is no repair: where it does not take up, find the cause or replace it.',
} as const;

export const WRENCH = {
  heading: 'Pictures of the wrench',
  how: 'Leave a wrench on the hex. Brake released: take a picture straight at the end of the hex, as near from the same place as you can. First one before any application, then one after every two or so.',
  backedOff: 'To back it off, the wrench was turned (as the pictures show it)',
  still: 'The camera stands on something and stays there',
  stillHint: 'Held by hand, the arm is marked too: it tells how the camera turned.',
  add: 'Take a picture now',
  picture: (number: number, applications: number) =>
    `Picture ${number}, after ${applications} application${applications === 1 ? '' : 's'}`,
  toMark: 'to be marked',
  marked: 'marked',
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
export type WrenchPoint = (typeof WRENCH_POINTS)[number];

export const WRENCH_POINT_NAMES: Readonly<Record<WrenchPoint, string>> = {
  centre: 'Middle of the hex',
  tip: 'Far end of the wrench',
  camshaft: 'Camshaft end',
  pin: 'Clevis pin',
};

export const WRENCH_POINT_ASKED: Readonly<Record<WrenchPoint, string>> = {
  centre: 'Tap the middle of the hex.',
  tip: 'Tap a spot far out on the wrench: the same spot in every picture.',
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
      return 'About 5° or less, or too uncertain. More applications; pictures straight at the hex, from a camera that stands still.';
    case 'adjuster/direction-not-said':
      return 'It turned. Say which way it was backed off: taking up is the other way.';
    case 'adjuster/turned-off':
      return 'The wrench went on in the direction of backing off. That is not taking up: did it slip or fall?';
    case 'adjuster/went-back':
      return 'The wrench went forth and back between the pictures. Put it on firmly and begin anew.';
  }
}

export function turnFailureText(failure: AdjusterTurnFailure): string {
  switch (failure.code) {
    case 'adjuster-turn/too-few':
      return 'Two marked pictures with applications between them tell the turn.';
    case 'adjuster-turn/no-arm':
      return 'The camera may have turned: mark the arm in every picture, or say that the camera stood still.';
    case 'adjuster-turn/short':
      return `The wrench is too short in the picture after ${failure.applicationsBefore} applications. Mark a spot farther out, or go nearer.`;
    case 'adjuster-turn/lengths-differ':
      return 'The wrench is longer in one picture than another can explain: mark the same spot of it in every picture.';
    case 'adjuster-turn/too-far':
      return `Near half a turn up to the picture after ${failure.applicationsBefore} applications: which way it went cannot be told. Take a picture more often.`;
  }
}
