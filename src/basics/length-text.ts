/** Lengths as people write and read them. Millimetres inside; this is the only place where a length is rounded. */
import { assert, fail, ok, type Result } from './result.ts';
import { inchesFromMm, mmFromInches } from './units.ts';

/** fraction: inches in sixteenths, as on a tape. decimal-inch: thousandths. mm: tenths. */
export const LENGTH_UNITS = ['fraction', 'decimal-inch', 'mm'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Steps of the last place shown, per inch or per millimetre. */
const STEPS: Readonly<Record<LengthUnit, number>> = { fraction: 16, 'decimal-inch': 1000, mm: 10 };

/** A multiple of the step that binary fractions put a hair to one side (57.15 mm) still counts as that multiple. */
const HAIR = 1e-9;

export function formatLength(lengthMm: number, unit: LengthUnit): string {
  return `${placed(nearestStep(lengthMm, unit), unit)} ${unitSign(unit)}`;
}

/** Shown no smaller than it is: what is stated as at most so much. */
export function formatLengthUp(lengthMm: number, unit: LengthUnit): string {
  return `${placed(Math.ceil(inSteps(lengthMm, unit) - HAIR), unit)} ${unitSign(unit)}`;
}

/** Shown no larger than it is: what is stated as at least so much. */
export function formatLengthDown(lengthMm: number, unit: LengthUnit): string {
  return `${placed(Math.floor(inSteps(lengthMm, unit) + HAIR), unit)} ${unitSign(unit)}`;
}

/** The value with its expanded uncertainty, both to the same place; U is rounded up, never down. */
export function formatLengthWithU(lengthMm: number, UMm: number, unit: LengthUnit): string {
  assert(UMm >= 0, 'an uncertainty is not negative');
  const value = placed(nearestStep(lengthMm, unit), unit);
  return `${value} ± ${placed(Math.ceil(inSteps(UMm, unit) - HAIR), unit)} ${unitSign(unit)}`;
}

function nearestStep(lengthMm: number, unit: LengthUnit): number {
  return Math.sign(lengthMm) * Math.floor(inSteps(Math.abs(lengthMm), unit) + 0.5 + HAIR);
}

function inSteps(lengthMm: number, unit: LengthUnit): number {
  assert(Number.isFinite(lengthMm), 'a length to be shown is a finite number');
  return (unit === 'mm' ? lengthMm : inchesFromMm(lengthMm)) * STEPS[unit];
}

function placed(steps: number, unit: LengthUnit): string {
  const sign = steps < 0 ? '-' : '';
  const count = Math.abs(steps);
  if (unit !== 'fraction') return sign + (count / STEPS[unit]).toFixed(unit === 'mm' ? 1 : 3);
  let numerator = count % STEPS.fraction;
  let denominator = STEPS.fraction;
  while (numerator !== 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const whole = Math.floor(count / STEPS.fraction);
  if (numerator === 0) return `${sign}${whole}`;
  return `${sign}${whole === 0 ? '' : `${whole} `}${numerator}/${denominator}`;
}

function unitSign(unit: LengthUnit): string {
  return unit === 'mm' ? 'mm' : 'in';
}

export type LengthTextFailure =
  | { readonly code: 'length-text/empty' }
  | { readonly code: 'length-text/not-a-length' }
  | { readonly code: 'length-text/negative' }
  | { readonly code: 'length-text/unknown-unit'; readonly unit: string }
  /** A fraction that no tape has: its lower number is none of 2, 4, 8, 16, 32, 64. */
  | { readonly code: 'length-text/denominator'; readonly denominator: number }
  /** `111/4` is more likely a lost space in `11 1/4`. */
  | {
      readonly code: 'length-text/improper-fraction';
      readonly numerator: number;
      readonly denominator: number;
    }
  /** A fraction where millimetres are expected may well be meant in inches. */
  | { readonly code: 'length-text/fraction-of-mm' }
  /** `1,250` is read as 1.25 by some and as 1250 by others. */
  | { readonly code: 'length-text/comma-ambiguous' };

const NUMBER = /^(?<decimal>\d{1,5}(?:[.,]\d{0,9})?|[.,]\d{1,9})(?<unit>\D.*)?$/;
const FRACTION =
  /^(?:(?<whole>\d{1,5})(?: +|-))?(?<numerator>\d{1,5}) ?\/ ?(?<denominator>\d{1,5})(?<unit>\D.*)?$/;
const TAPE_DENOMINATORS = [2, 4, 8, 16, 32, 64];

/** Reads what a person typed; a number without a unit is in the default unit. */
export function parseLength(text: string, defaultUnit: LengthUnit): Result<number, LengthTextFailure> {
  const plain = withPlainSigns(text);
  if (plain === '') return fail({ code: 'length-text/empty' });
  if (plain.startsWith('-')) return fail({ code: 'length-text/negative' });
  const fraction = FRACTION.exec(plain)?.groups;
  const number = fraction ?? NUMBER.exec(plain)?.groups;
  if (!number) return fail({ code: 'length-text/not-a-length' });
  const unit = parseUnit(number.unit ?? '', defaultUnit);
  if (!unit.ok) return unit;
  if (fraction && unit.value === 'mm') return fail({ code: 'length-text/fraction-of-mm' });
  const value = fraction ? fractionValue(fraction) : decimalValue(number.decimal ?? '');
  if (!value.ok) return value;
  return ok(unit.value === 'mm' ? value.value : mmFromInches(value.value));
}

/** Telephones set curly quotes, long dashes and ready-made fractions by themselves. */
function withPlainSigns(text: string): string {
  return text
    .replace(/[¼½¾⅛⅜⅝⅞]/g, ' $&')
    .normalize('NFKC')
    .replaceAll('\u2044', '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/''|[\u2032\u2019]{2}|[\u201c\u201d\u2033]/g, '"')
    .replace(/\s+/g, ' ')
    .trim();
}

function parseUnit(text: string, defaultUnit: LengthUnit): Result<'inch' | 'mm', LengthTextFailure> {
  const unit = text.trim().toLowerCase();
  if (unit === '') return ok(defaultUnit === 'mm' ? 'mm' : 'inch');
  if (unit === 'mm') return ok('mm');
  if (['"', 'in', 'in.', 'inch', 'inches'].includes(unit)) return ok('inch');
  return /^[a-z'.]+$/.test(unit)
    ? fail({ code: 'length-text/unknown-unit', unit })
    : fail({ code: 'length-text/not-a-length' });
}

function decimalValue(text: string): Result<number, LengthTextFailure> {
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) return fail({ code: 'length-text/comma-ambiguous' });
  return ok(Number(text.replace(',', '.')));
}

function fractionValue(
  groups: Readonly<Record<string, string | undefined>>,
): Result<number, LengthTextFailure> {
  const numerator = Number(groups.numerator);
  const denominator = Number(groups.denominator);
  if (!TAPE_DENOMINATORS.includes(denominator)) return fail({ code: 'length-text/denominator', denominator });
  if (numerator >= denominator)
    return fail({ code: 'length-text/improper-fraction', numerator, denominator });
  return ok(Number(groups.whole ?? 0) + numerator / denominator);
}
