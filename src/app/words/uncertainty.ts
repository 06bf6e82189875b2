/** How sure the result is: what the fit, the budget and the check by trials say. */
import type { BudgetGroup } from '../../adjustment/budget-group.ts';
import type { LengthUnit } from '../../basics/length-text.ts';
import type { Outcome } from '../../finding/guard-band.ts';
import type { Measured } from '../../measurement/measured.ts';
import type { Fit } from '../../measurement/measurement.ts';
import type { TrialResult, TrialsFailure } from '../../measurement/monte-carlo-joined.ts';
import { measurementFailureText } from './failures-measurement.ts';
import { OUTCOMES } from './findings.ts';
import { lengthText, measuredAngleText, measuredLengthText } from './values.ts';

const count = (n: number) => n.toLocaleString('en-CA');

export const HOW_SURE = {
  heading: 'How sure',
  numbers: 'The numbers behind it',
  chiSquare: 'Squared misfits, summed (chi-square)',
  expected: 'Sum to be expected (degrees of freedom)',
  chance: 'Chance of such a sum or a larger one',
  widened: 'U widened for the scatter',
  u: 'Standard uncertainty of the stroke (k = 1)',
  worst: 'Largest misfit of a mark, by its own spread',
};

/** Whether the marks agree, and how many observations there are to check each other. */
export function fitText({ pValue, inflation, degreesOfFreedom }: Fit): string {
  const more = Math.round(degreesOfFreedom);
  if (more === 0 && inflation === 1)
    return 'Hardly more is observed than is needed: these marks do not check each other. One more mark or reference would.';
  const spare =
    more === 1
      ? '1 observation more than is needed checks the others.'
      : `${count(more)} observations more than are needed check each other.`;
  if (inflation > 1)
    return `${spare} They disagree: a scatter like this comes up in fewer than 1 of 100 honest measurements. U is widened ${inflation.toFixed(1)} times for it.`;
  const ofHundred = Math.max(1, Math.round(pValue * 100));
  const often = ofHundred > 99 ? 'nearly all' : `${ofHundred} of 100`;
  return `${spare} They agree: a scatter like this or a larger one comes up in ${often} honest measurements.`;
}

export const chanceText = (pValue: number) =>
  pValue < 1e-4 ? 'under 0.0001' : pValue.toPrecision(2).replace(/e.*$/, '');

export const widenedText = (inflation: number) =>
  inflation > 1 ? `× ${inflation.toFixed(2)}` : 'not at all';

export const BUDGET = {
  caption: 'Where the uncertainty of the stroke comes from',
  note: 'Each bar is a share of the whole, the length what that share alone would leave (standard uncertainty).',
  share: (share: number) => `${Math.round(share * 100)} %`,
};

export const BUDGET_NAMES: Readonly<Record<BudgetGroup, string>> = {
  marks: 'Marks: how closely they are set',
  tape: 'Tape: its zero, its scale, how it is held',
  target: 'Printed target: its print, how it lies',
  'clamp-band': 'Clamp band: its diameter, where its rim is',
  'arm-length': 'Arm length as stated',
  distance: 'Known distance: how well it is known',
  depth: 'Depth: how far from the rod the parts lie',
  camera: 'Camera: its lens, where it looks from',
  mechanism: 'Brake: its play, usual sizes of its parts',
};

export const WORST_MARK = {
  least: 'Fits the others least',
  lookAgain: 'Look at this mark again: it contradicts the others and may pull the stroke with it.',
  off: (residual: number) => `off by ${Math.abs(residual).toFixed(1)} times its spread`,
};

export const TRIALS = {
  check: (trials: number) => `Check the uncertainty by ${count(trials)} trials`,
  why: 'Every mark, reference and usual size is moved at random by its own uncertainty and the stroke worked out anew each time. Where the trials fall shows how sure it is.',
  running: (done: number, of: number) => `${count(done)} of ${count(of)} trials`,
  stop: 'Stop',
  heading: 'By trials',
  quantity: 'At 95 %',
  stated: 'Worked out',
  byTrials: 'By trials',
  lost: (lost: number, of: number) =>
    `${count(lost)} of the ${count(of)} trials found no solution and are left out.`,
  picture: 'Where the trials fall',
  /** A limit to the left or the right of what is drawn. */
  limitBeyond: (limit: string, left: boolean) => (left ? `← ${limit}` : `${limit} →`),
};

const inside = ({ symmetric }: TrialResult, unit: LengthUnit) =>
  `95 of 100 trials fall between ${lengthText(symmetric.low, unit)} and ${lengthText(symmetric.high, unit)}.`;

/** Agreement or not, and then which of the two to rely on. */
export function strokeTrialsText(stated: Measured, result: TrialResult, unit: LengthUnit): string {
  if (result.agreement.agree) return `The trials bear the uncertainty out. ${inside(result, unit)}`;
  const larger = measuredLengthText({ ...stated, U95: result.largerU95 }, unit);
  return result.U95 > stated.U95
    ? `The trials do not bear the uncertainty out: it is larger than worked out. ${inside(result, unit)} Rely on ${larger}.`
    : `The trials do not bear the uncertainty out: they scatter less than worked out. ${inside(result, unit)} Rely on the larger, ${larger}.`;
}

export const otherOutcomeText = (outcome: Outcome) =>
  `With that uncertainty the finding would be: ${OUTCOMES[outcome]}.`;

export const trialsLengthText = (stated: Measured, { U95 }: TrialResult, unit: LengthUnit) =>
  measuredLengthText({ ...stated, U95 }, unit);

export const trialsAngleText = (stated: Measured, { U95 }: TrialResult) =>
  measuredAngleText({ ...stated, U95 });

export function trialsFailureText(failure: TrialsFailure, unit: LengthUnit): string {
  if (failure.code !== 'monte-carlo/trials-lost') return measurementFailureText(failure, unit);
  return `${count(failure.lost)} of ${count(failure.asked)} trials found no solution, too many to say how the others would spread. Do not rely on the uncertainty: add a reference or more marks.`;
}
