/** Wheel ends, axles and the vehicle against the rules: one sentence for each code, with the rule it rests on. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { degFromRad } from '../../basics/units.ts';
import type { FreeStrokeBounds } from '../../finding/free-stroke.ts';
import type { RuleSet } from '../../finding/rule-set.ts';
import type { RuleId, RuleText } from '../../finding/rule-text.ts';
import type { AxleNote } from '../../record/axle-notes.ts';
import type { Purpose } from '../../record/measurement-input.ts';
import type { RoadsideShare } from '../../record/roadside-share.ts';
import type { WheelEndNote } from '../../record/wheel-end-notes.ts';
import { chamberNoteText } from './chamber-notes.ts';
import { chamberText } from './given.ts';
import { positionName } from './inspection.ts';
import { lengthText, measuredAngleText, measuredLengthText } from './values.ts';
import { OTHER_NAMES } from './wheel-end.ts';

const FORCE: Readonly<Record<RuleText['force'], string>> = {
  law: 'Law',
  criteria: 'Roadside criteria',
  advice: 'Advice',
};

/** The rule in our own words, then where it stands and how well we know it. */
export function ruleText(rule: RuleId, ruleSet: RuleSet): string {
  const found = ruleSet.rules.find(({ id }) => id === rule);
  if (!found) return '';
  const sources = ruleSet.sources.filter(({ id }) => found.sources.includes(id));
  const cited = sources.map(({ citation, edition, standing }) => `${citation}; ${edition} (${standing})`);
  return `${FORCE[found.force]}: ${found.text} Source: ${cited.join(' / ')}.`;
}

const WHEN: Readonly<Record<Purpose, string>> = { 'as-found': 'as found', 'after-repair': 'after repair' };

export function wheelEndNoteText(note: WheelEndNote, unit: LengthUnit): string {
  const length = (mm: number) => lengthText(mm, unit);
  const withU = (value: number, U95: number) => measuredLengthText({ value, U95 }, unit);
  switch (note.code) {
    case 'wheel-end/hand-differs':
      return `Pictures and tape by hand, ${WHEN[note.purpose]}, differ by ${withU(note.differenceMm, note.U95Mm)}: more than both uncertainties explain. Measure again.`;
    case 'wheel-end/hand-contradicts':
      return `Pictures and tape by hand, ${WHEN[note.purpose]}, contradict each other: nothing is decided. Measure again, both ways.`;
    case 'wheel-end/hand-misread':
      return `A tape reading ${WHEN[note.purpose]} is smaller applied than released: one of the two was misread, and it is not used.`;
    case 'wheel-end/free-stroke-short':
      return `Free stroke ${WHEN[note.purpose]} ${withU(note.freeStrokeMm, note.U95Mm)} is short (${boundsText(note, unit)}): set too tight, or dragging.`;
    case 'wheel-end/free-stroke-long':
      return `Free stroke ${WHEN[note.purpose]} ${withU(note.freeStrokeMm, note.U95Mm)} is long (${boundsText(note, unit)}): look at the adjuster and how it is mounted.`;
    case 'wheel-end/arm-past-square':
      return pastSquareText(note);
    case 'wheel-end/reading-over-limit':
      return readingText(note.reading, unit);
    case 'wheel-end/repair-not-measured':
      return 'Repaired, and the stroke was not measured after it: what was found holds.';
    case 'wheel-end/repair-not-written-down':
      return 'Measured after repair, and no repair is written down.';
    case 'wheel-end/no-change-proven':
      return `The stroke after repair differs from the one as found by ${withU(note.changeMm, note.U95Mm)}: no change is proven.`;
    case 'repair/adjusting-is-no-repair':
      return 'An automatic adjuster was turned by hand, and neither a cause nor a part is named. That is no repair: it hides the cause, and the stroke grows again.';
    case 'repair/adjusting-may-be-no-repair':
      return 'The adjuster was turned by hand, and neither a cause nor a part is named. If it is an automatic one, that is no repair: say which kind it is.';
    case 'repair/free-stroke-set-short':
      return `Free stroke set to ${length(note.setMm)} is short (${boundsText(note, unit)}): the brake may drag.`;
    case 'repair/free-stroke-set-long':
      return `Free stroke set to ${length(note.setMm)} is long (${boundsText(note, unit)}).`;
    case 'repair/free-stroke-makers-differ':
      return `Free stroke set to ${length(note.setMm)}: makers differ here (${boundsText(note, unit)}). The adjuster’s maker decides.`;
    default:
      return chamberNoteText(note, unit);
  }
}

function pastSquareText(note: Extract<WheelEndNote, { code: 'wheel-end/arm-past-square' }>): string {
  const { purpose, angleRad, U95Rad, halfStrokeRad, isFar } = note;
  const past = (rad: number) => `${(90 - degFromRad(rad)).toFixed(1)}°`;
  const angle = measuredAngleText({ value: angleRad, U95: U95Rad });
  const half =
    halfStrokeRad === null ? '' : ` An arm set square at half this stroke ends ${past(halfStrokeRad)} past.`;
  const far = isFar ? ' This one is further: look at arm length, rod length and adjustment.' : '';
  return `Arm past square when applied, ${WHEN[purpose]}: ${angle}, ${past(angleRad)} past.${half}${far} Advice only: no law names an angle.`;
}

function readingText(
  { what, name, valueMm, limitMm, limitIs, limitSource, purpose }: OverReading,
  unit: LengthUnit,
): string {
  const named = name.trim() || OTHER_NAMES[what];
  const source = limitSource.trim() || 'source not given';
  return `${named}, ${WHEN[purpose]}: ${lengthText(valueMm, unit)} is ${limitIs === 'greatest' ? 'more' : 'less'} than the limit of ${lengthText(limitMm, unit)} (${source}).`;
}

type OverReading = Extract<WheelEndNote, { code: 'wheel-end/reading-over-limit' }>['reading'];

function boundsText({ leastMm, mostMm, mostElsewhereMm }: FreeStrokeBounds, unit: LengthUnit): string {
  const [least, most, elsewhere] = [leastMm, mostMm, mostElsewhereMm].map((mm) => lengthText(mm, unit));
  return `usual ${least} to ${most}, one maker up to ${elsewhere}`;
}

export function axleNoteText(note: AxleNote, unit: LengthUnit): string {
  const length = (mm: number) => lengthText(mm, unit);
  switch (note.code) {
    case 'axle/chamber-size-differs':
      return `Chambers of different size on one axle: left ${chamberText(note.left)}, right ${chamberText(note.right)}.`;
    case 'axle/chamber-kind-differs':
      return `Chambers of different kind on one axle: left ${chamberText(note.left)}, right ${chamberText(note.right)}. Check that they are of the same size.`;
    case 'axle/stroke-class-differs':
      return 'Standard and long stroke mixed on one axle.';
    case 'axle/rated-stroke-differs':
      return `Rated strokes differ on one axle: left ${length(note.leftMm)}, right ${length(note.rightMm)}.`;
    case 'axle/arm-length-differs':
      return `Arms of different length on one axle: left ${length(note.leftMm)}, right ${length(note.rightMm)} (± ${length(note.U95Mm)}).`;
    case 'axle/stroke-differs':
      return `Strokes differ from left to right by ${measuredLengthText({ value: Math.abs(note.differenceMm), U95: note.U95Mm }, unit)}, the ${note.differenceMm > 0 ? 'left' : 'right'} one longer. No rule gives this a limit; the brakes should pull alike.`;
    case 'axle/steer-judged-alone':
      return note.because === 'over-limit'
        ? 'Steering axle with a stroke over the limit: at the roadside a steering axle is also judged by itself.'
        : 'Steering axle that differs from side to side: at the roadside it is judged by itself.';
  }
}

export const ROADSIDE = {
  heading: 'Defective brakes by stroke, as the roadside counts',
  onlyThis:
    'Counted for this vehicle by stroke only. The criteria count the whole combination and other defects too, and the current edition decides.',
};

export function roadsideShareText(share: RoadsideShare): string {
  const { brakes, least, most, criterionShare, reached } = share;
  if (brakes === 0) return 'The plan has no axle yet: nothing to count.';
  const count = least === most ? countText(least) : `${countText(least)} to ${countText(most)}`;
  const percent = [least, most].map((one) => Math.round((100 * one) / brakes));
  const shares = percent[0] === percent[1] ? `${percent[0]} %` : `${percent[0]} to ${percent[1]} %`;
  const criterion = `${Math.round(100 * criterionShare)} %`;
  const verdict = {
    yes: `that reaches ${criterion}`,
    no: `that stays below ${criterion}`,
    open: `whether that reaches ${criterion} is open`,
  }[reached];
  return `${count} of ${brakes} brakes, ${shares}: ${verdict}.`;
}

export function unknownBrakesText({ unknown }: RoadsideShare): string {
  return unknown.length === 0 ? '' : `Not known: ${unknown.map(positionName).join('; ')}.`;
}

function countText(count: number): string {
  const whole = Math.floor(count);
  if (count === whole) return String(whole);
  return whole === 0 ? '½' : `${whole} ½`;
}

/** Stands with every stroke by hand. */
export const HAND_NOTE =
  'By hand: the uncertainty holds the tape’s graduation and 1 mm for the mark’s edge and the line of sight (common practice, no source). A tape held askew, seen askew or off the rod, a wide mark and a pedal let up are not in it.';
