/** Values as text. A measured one never stands without its unit and U. */

import { formatLength, formatLengthWithU, type LengthUnit } from '../../basics/length-text.ts';
import { degFromRad, mmFromInches } from '../../basics/units.ts';
import type { WithU } from '../../measurement/measured.ts';

export const lengthText = (mm: number, unit: LengthUnit) => formatLength(mm, unit);

/** What is shown of a measured value. */
type Shown = Pick<WithU, 'value' | 'U95'>;

export const measuredLengthText = ({ value, U95 }: Shown, unit: LengthUnit) =>
  formatLengthWithU(value, U95, unit);

/** Diameters of the table are whole thirty-seconds: finer than a length is shown elsewhere. */
export function diameterText(inches: number, unit: LengthUnit): string {
  if (unit !== 'fraction') return formatLength(mmFromInches(inches), unit);
  const whole = Math.floor(inches);
  const parts = Math.round((inches - whole) * 32);
  const divisor = [32, 16, 8, 4, 2, 1].find((each) => parts % each === 0) ?? 1;
  return parts === 0 ? `${whole} in` : `${whole} ${parts / divisor}/${32 / divisor} in`;
}

/** U is rounded up, never down. */
export function measuredAngleText({ value, U95 }: Shown): string {
  const tenths = Math.ceil(degFromRad(U95) * 10 - 1e-9) / 10;
  return `${degFromRad(value).toFixed(1)}° ± ${tenths.toFixed(1)}°`;
}

export function clipTimeText(timeTicks: number, ticksPerSecond: number): string {
  return `${(timeTicks / ticksPerSecond).toFixed(3)} s`;
}

export function dayText(isoTime: string): string {
  return new Date(isoTime).toLocaleString('en-CA', { dateStyle: 'medium', timeStyle: 'short' });
}

export function shortDayText(isoTime: string): string {
  return new Date(isoTime).toLocaleDateString('en-CA', { year: '2-digit', month: 'short' });
}

export function sizeText(bytes: number): string {
  return bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}

/** A standard uncertainty for the budget: hundredths of a millimetre, rounded up. */
export const uText = (uMm: number) => `${(Math.ceil(uMm * 100 - 1e-9) / 100).toFixed(2)} mm`;

const NAMES_SHOWN = 3;

export function quotedNames(names: readonly string[]): string {
  const more = names.length - NAMES_SHOWN;
  const shown = names.slice(0, NAMES_SHOWN).map((name) => `“${name}”`);
  return `${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}
