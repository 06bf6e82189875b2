/** Words for reading a package's pictures a second time. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { degFromRad } from '../../basics/units.ts';
import type { QuantityName } from '../../evidence/results.ts';
import type { Comparison } from '../../recheck/second-reading.ts';
import { measuredLengthText } from './values.ts';

export const SECOND = {
  heading: 'Your own reading',
  sentence:
    'Mark the same pictures yourself, without the first reader’s marks, and compare. Look at the results below only afterwards.',
  start: 'Place your own marks',
  goOn: 'Go on with your own marks',
  comparing: 'Measuring from your marks …',
  nothingYet: 'Nothing to compare yet: place the marks of a measurement, then open the package again.',
  columns: ['Quantity', 'Yours less the first', 'En', 'The two readings'],
  agrees: 'agree',
  differs: 'do not agree',
  meaning:
    'En is the difference over its expanded uncertainty, from the marks alone: pictures, reference and camera are the same for both. Up to 1 they agree (ISO 13528).',
};

export const QUANTITY_NAMES: Readonly<Record<QuantityName, string>> = {
  strokeMm: 'stroke',
  straightLineChangeMm: 'straight line, face to pin',
  freeStrokeMm: 'free stroke',
  armAngleReleasedRad: 'arm angle, released',
  armAngleAppliedRad: 'arm angle, applied',
};

export function comparedText({ quantity, difference, U95 }: Comparison, unit: LengthUnit): string {
  const text = quantity.endsWith('Rad')
    ? `${degFromRad(Math.abs(difference)).toFixed(1)}° ± ${(Math.ceil(degFromRad(U95) * 10) / 10).toFixed(1)}°`
    : measuredLengthText({ value: Math.abs(difference), U95 }, unit);
  return `${difference < 0 ? '−' : '+'}${text}`;
}
