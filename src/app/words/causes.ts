/** What can be wrong with a brake whose stroke is too long, and how to look, in the words of the trade. */
import type { Evidence } from '../../finding/cause-rules.ts';
import type { PointedCause } from '../../finding/cause-search.ts';
import type { Cause, CauseCheck } from '../../finding/causes.ts';
import type { FirstLook } from '../../record/wheel-end-search.ts';

export const CAUSE_NAMES: Readonly<Record<Cause, string>> = {
  'adjuster-worn': 'Adjuster worn or seized',
  'adjuster-mounting': 'Adjuster’s anchor or control arm loose or bent',
  'adjuster-set-wrong': 'Adjuster installed or set wrong',
  'clevis-worn': 'Clevis pin or bushing worn',
  'push-rod-length': 'Push rod too long or too short',
  'push-rod-bent': 'Push rod bent or rubbing',
  'chamber-loose': 'Chamber or its bracket loose or cracked',
  'chamber-wrong': 'Wrong chamber',
  'arm-length-wrong': 'Wrong arm length',
  'camshaft-bushing-worn': 'Camshaft bushing worn',
  'camshaft-bent-or-dry': 'Camshaft bent or dry',
  'linings-worn': 'Linings worn',
  'drum-worn': 'Drum worn or oversize',
  'shoe-spring-broken': 'Shoe spring or roller broken',
  other: 'Another cause',
  'not-found': 'No cause found',
};

export type CheckWords = { readonly question: string; readonly how: string };

/** Every question asks for the good state. Hands stay out while somebody is at the pedal. */
export const CHECKS: Readonly<Record<CauseCheck, CheckWords>> = {
  'adjuster-turns': {
    question: 'Does the adjuster take up?',
    how: 'Back its hex off, then apply and release fully, again and again: the hex must creep in steps and the stroke shrink.',
  },
  'adjuster-holds': {
    question: 'Does it hold what it took up?',
    how: 'Turn the hex back with a torque wrench: it must resist as its maker says, and not slip.',
  },
  'adjuster-mounting-tight': {
    question: 'Are anchor bracket and control arm tight and in place?',
    how: 'Brake released, pull at the control arm and its bracket by hand: no play, not bent, in the hole the maker gives.',
  },
  'clevis-free-of-play': {
    question: 'Are clevis, pins and bushings free of play?',
    how: 'Brake released, move the arm by hand and watch the pins in their holes.',
  },
  'push-rod-straight': {
    question: 'Is the push rod straight, clear and of the right length?',
    how: 'Look along it, released and applied: not rubbing in the housing, jam nut tight, clevis threaded on far enough.',
  },
  'chamber-mounting-tight': {
    question: 'Is the chamber tight on a sound bracket?',
    how: 'Watch chamber and bracket from aside while somebody applies: neither may move. Look for cracks, check the nuts.',
  },
  'chamber-as-other-side': {
    question: 'Is the chamber like the one on the other side?',
    how: 'Compare size, boss, tag and marking with the other end of the axle.',
  },
  'arm-as-other-side': {
    question: 'Is the arm as long as on the other side?',
    how: 'Measure from the camshaft’s middle to the pin’s middle at both ends of the axle.',
  },
  'camshaft-free-of-play': {
    question: 'Is the camshaft free of play?',
    how: 'Lift it with a bar and read a dial indicator at the shaft; the maker gives the limit.',
  },
  'camshaft-turns-freely': {
    question: 'Does the camshaft turn freely and go all the way back?',
    how: 'Brake released, turn it by the arm: no binding, no stop before it is back.',
  },
  'linings-thick-enough': {
    question: 'Are the linings thick enough?',
    how: 'Measure the thinnest place through the inspection hole, or with the drum off.',
  },
  'drum-within-size': {
    question: 'Is the drum within its size?',
    how: 'Drum off and cold, measure inside across two ways against the size cast on it; look for cracks.',
  },
  'shoe-springs-whole': {
    question: 'Are shoe springs, rollers and pads whole?',
    how: 'Drum off: no spring broken or slack, no flat on a roller, nothing missing.',
  },
};

const EVIDENCE_NAMES: Readonly<Record<Evidence, string>> = {
  'stroke-over': 'stroke over the limit',
  'free-stroke-long': 'free stroke long',
  'free-stroke-short': 'free stroke short',
  'free-stroke-in-range': 'free stroke in range',
  'adjuster-takes-up': 'adjuster takes up',
  'adjuster-does-not-take-up': 'adjuster does not take up',
  'adjuster-play-over': 'adjuster’s end play past its limit',
  'camshaft-play-over': 'camshaft play past its limit',
  'lining-under': 'lining under its limit',
  'drum-over': 'drum past its limit',
  'chamber-mismatch': 'chambers differ on the axle',
  'arm-mismatch': 'arms differ on the axle',
  'arm-past-square': 'arm past square when applied',
  'adjusted-by-hand': 'was adjusted by hand before',
};

export const FIRST_LOOKS: Readonly<Record<FirstLook, string>> = {
  conditions: 'Before the brake is doubted: conditions are missing or not as asked.',
  chamber: 'Before the brake is doubted: is it the chamber that was chosen?',
  'hand-reading': 'Before the brake is doubted: pictures and tape by hand differ.',
};

export const SEARCH = {
  heading: 'What to check next',
  usual: 'next in the usual order',
  causes: 'What this points to',
  noneYet: 'Nothing points to one cause yet.',
  finds: 'The search proposes; whoever has the brake in hand finds.',
};

/** Why a check comes next. */
export const becauseText = (because: readonly Evidence[]) =>
  because.length === 0 ? SEARCH.usual : because.map((one) => EVIDENCE_NAMES[one]).join(', ');

export function pointedCauseText({ cause, answers, evidence }: PointedCause): string {
  const because = [
    ...answers.map((check) => `“${CHECKS[check].question}” no`),
    ...evidence.map((one) => EVIDENCE_NAMES[one]),
  ];
  return `${CAUSE_NAMES[cause]}: ${because.join(', ')}.`;
}
