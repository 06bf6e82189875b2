/** The check of an automatic adjuster: what it means, in few words. Source of the facts: docs/rules.md. */
import type { AdjusterCheck } from '../../record/wheel-end.ts';

type AdjusterAnswer = NonNullable<AdjusterCheck['answer']>;

export const ADJUSTER_ANSWERS: Readonly<Record<AdjusterAnswer, string>> = {
  'takes-up': 'Takes up',
  'does-not-take-up': 'Does not',
  'cannot-tell': 'Cannot tell',
};

export const ADJUSTER_CHECK = {
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
