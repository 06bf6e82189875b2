/**
 * The cause search of one wheel end.
 *
 * Rule     it begins where something is wrong: a stroke over the limit, a free stroke out of range, an adjuster that does not take up,
 *          a reading over its limit, a mismatch on the axle. It looks at what was found, or at the recheck where that is over too.
 *          Before the brake is doubted the question is: conditions that are open, a chamber that may be another one, a hand reading
 *          that differs.
 */

import type { Evidence } from '../finding/cause-rules.ts';
import { type CauseSearch, causeSearch } from '../finding/cause-search.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import type { AxleNote } from './axle-notes.ts';
import type { ConditionNote } from './condition-notes.ts';
import { evidenceAtHand } from './evidence-at-hand.ts';
import type { WheelEnd } from './wheel-end.ts';
import type { WheelEndNote } from './wheel-end-notes.ts';
import type { JudgedWheelEnd } from './wheel-end-results.ts';

export const FIRST_LOOKS = ['conditions', 'chamber', 'hand-reading'] as const;
export type FirstLook = (typeof FIRST_LOOKS)[number];

export type WheelEndSearch = CauseSearch & {
  /** Questions that come before the brake is doubted. */
  readonly first: readonly FirstLook[];
};

/** Nothing to search for by themselves: they only tell where to look. */
const NO_FAULT: readonly Evidence[] = [
  'free-stroke-in-range',
  'adjuster-takes-up',
  'adjusted-by-hand',
  'arm-past-square',
];

const CHAMBER_DOUBTS: readonly WheelEndNote['code'][] = [
  'chamber/looks-long',
  'chamber/long-against-looks',
  'chamber/band-contradicts',
  'chamber/not-looked-at',
];

export function wheelEndSearch(
  wheelEnd: WheelEnd,
  judged: JudgedWheelEnd,
  around: {
    readonly axle: readonly AxleNote[];
    readonly conditions: readonly ConditionNote[];
    readonly ruleSet: RuleSet | null;
  },
): WheelEndSearch | null {
  const { asFound, afterRepair, notes } = judged;
  const searched = afterRepair.state === 'over limit' ? afterRepair : asFound;
  const evidence = evidenceAtHand(wheelEnd, searched, around.axle, around.ruleSet);
  if (evidence.every((one) => NO_FAULT.includes(one))) return null;
  const has = (codes: readonly WheelEndNote['code'][]) => notes.some(({ code }) => codes.includes(code));
  const first: readonly (FirstLook | false)[] = [
    around.conditions.length > 0 && 'conditions',
    has(CHAMBER_DOUBTS) && 'chamber',
    has(['wheel-end/hand-differs', 'wheel-end/hand-contradicts']) && 'hand-reading',
  ];
  return {
    ...causeSearch(evidence, wheelEnd.causeAnswers),
    first: first.filter((look) => look !== false),
  };
}
