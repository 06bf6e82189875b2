// 49 CFR 393.47(e)(1), clamp-type, DD-3 type, bolt-type and rotochamber tables, transcribed a second time and by hand from
// the eCFR text (the dated texts of 2012 to 2021 and of 2021 on; they differ in clamp type 36 only).
import { expect, test } from 'vitest';
import { limitText } from '../../src/app/words/findings.ts';
import type { ChamberFamily, StrokeClass } from '../../src/finding/chamber.ts';
import { chamberSizes } from '../../src/finding/chamber-sizes.ts';
import { decideByHand } from '../../src/finding/decision.ts';
import { limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { chamber, INCH } from './chambers.ts';

const THREE_INCHES = 3 * INCH;

// Limits in thirty-seconds of an inch.
const PUBLISHED: readonly [ChamberFamily, string, StrokeClass, ratedMm: number | null, limit32: number][] = [
  ['clamp', '6', 'standard', null, 40],
  ['clamp', '9', 'standard', null, 44],
  ['clamp', '12', 'standard', null, 44],
  ['clamp', '12', 'long', null, 56],
  ['clamp', '16', 'standard', null, 56],
  ['clamp', '16', 'long', null, 64],
  ['clamp', '20', 'standard', null, 56],
  ['clamp', '20', 'long', null, 64],
  ['clamp', '20', 'long', THREE_INCHES, 80],
  ['clamp', '24', 'standard', null, 56],
  ['clamp', '24', 'long', null, 64],
  ['clamp', '24', 'long', THREE_INCHES, 80],
  ['clamp', '30', 'standard', null, 64], // also common practice, no source: 2 in
  ['clamp', '30', 'long', null, 80], // also common practice, no source: 2 1/2 in
  ['dd3', '30', 'standard', null, 72],
  ['bolt', 'A', 'standard', null, 44],
  ['bolt', 'B', 'standard', null, 56],
  ['bolt', 'C', 'standard', null, 56],
  ['bolt', 'D', 'standard', null, 40],
  ['bolt', 'E', 'standard', null, 44],
  ['bolt', 'F', 'standard', null, 72],
  ['bolt', 'G', 'standard', null, 64],
  ['rotochamber', '9', 'standard', null, 48],
  ['rotochamber', '12', 'standard', null, 48],
  ['rotochamber', '16', 'standard', null, 64],
  ['rotochamber', '20', 'standard', null, 64],
  ['rotochamber', '24', 'standard', null, 64],
  ['rotochamber', '30', 'standard', null, 72],
  ['rotochamber', '36', 'standard', null, 88],
  ['rotochamber', '50', 'standard', null, 96],
];

test.each(PUBLISHED)('%s %s %s, rated %s: %i/32 in', (family, type, strokeClass, ratedStrokeMm, limit32) => {
  const limit = limitFor(chamber(family, type, { strokeClass, ratedStrokeMm }), US_RULE_SET);
  expect(limit.ok).toBe(true);
  if (!limit.ok) return;
  expect(limit.value.values).toHaveLength(1);
  expect(limit.value.values[0].limitIn).toBe(limit32 / 32);
  expect(limit.value.values[0].limitMm).toBeCloseTo((limit32 / 32) * INCH, 12);
  expect(limit.value.values[0].sources).toEqual(['ecfr-2012', 'ecfr-2021']);
  expect(limit.value.openBecause).toBeNull();
});

test('clamp type 36 has two dated limits, 2 1/4 and 2 1/2 in', () => {
  const limit = limitFor(chamber('clamp', '36'), US_RULE_SET);
  expect(limit).toMatchObject({
    ok: true,
    value: {
      openBecause: 'editions-differ',
      values: [
        { limitIn: 2.25, sources: ['ecfr-2012'] },
        { limitIn: 2.5, sources: ['ecfr-2021'] },
      ],
    },
  });
});

test('the table has no other limit than these', () => {
  const limits = US_RULE_SET.rows.flatMap((row) => row.limits);
  expect(limits).toHaveLength(PUBLISHED.length + 2);
});

// Outside diameters of the same tables: whole inches and thirty-seconds, and the millimetres printed beside them.
const DIAMETERS: readonly [ChamberFamily, string, whole: number, thirtySeconds: number, printedMm: number][] =
  [
    ['clamp', '6', 4, 16, 114],
    ['clamp', '9', 5, 8, 133],
    ['clamp', '12', 5, 22, 145],
    ['clamp', '16', 6, 12, 162],
    ['clamp', '20', 6, 25, 172],
    ['clamp', '24', 7, 7, 184],
    ['clamp', '30', 8, 3, 206],
    ['clamp', '36', 9, 0, 229],
    ['dd3', '30', 8, 4, 206],
    ['bolt', 'A', 6, 30, 176],
    ['bolt', 'B', 9, 6, 234],
    ['bolt', 'C', 8, 2, 205],
    ['bolt', 'D', 5, 8, 133],
    ['bolt', 'E', 6, 6, 157],
    ['bolt', 'F', 11, 0, 279],
    ['bolt', 'G', 9, 28, 251],
    ['rotochamber', '9', 4, 9, 109],
    ['rotochamber', '12', 4, 26, 122],
    ['rotochamber', '16', 5, 13, 138],
    ['rotochamber', '20', 5, 30, 151],
    ['rotochamber', '24', 6, 13, 163],
    ['rotochamber', '30', 7, 2, 180],
    ['rotochamber', '36', 7, 20, 194],
    ['rotochamber', '50', 8, 28, 226],
  ];

test.each(DIAMETERS)('%s %s is %i %i/32 in across, printed %i mm', (family, type, whole, part, printed) => {
  const size = chamberSizes(US_RULE_SET).find((one) => one.family === family && one.type === type);
  expect(size?.outsideDiameterIn).toBe(whole + part / 32);
  expect(size?.outsideDiameterMm).toBeCloseTo((whole + part / 32) * INCH, 12);
  const row = US_RULE_SET.rows.find((one) => one.family === family && one.type === type);
  expect(row?.printedDiameterMm).toBe(printed);
  // The regulation's own rounding is up to a millimetre off.
  expect(Math.abs(printed - (whole + part / 32) * INCH)).toBeLessThan(1);
});

test('the screens are offered every listed chamber, and the stroke classes that exist', () => {
  const sizes = chamberSizes(US_RULE_SET);
  expect(sizes).toHaveLength(DIAMETERS.length);
  const long = sizes.filter((size) => size.strokeClasses.includes('long'));
  expect(long.map(({ family, type }) => `${family} ${type}`)).toEqual([
    'clamp 12',
    'clamp 16',
    'clamp 20',
    'clamp 24',
    'clamp 30',
  ]);
  expect(sizes.every((size) => size.strokeClasses.includes('standard'))).toBe(true);
  const asked = sizes.filter((size) => size.decidingRatedStrokesMm.length > 0);
  expect(asked.map(({ type }) => type)).toEqual(['20', '24']);
  expect(asked[0]?.decidingRatedStrokesMm[0]).toBeCloseTo(76.2, 12);
});

test('a printed limit in millimetres is its inches, rounded to a tenth', () => {
  for (const { limitIn, printedLimitMm } of US_RULE_SET.rows.flatMap((row) => row.limits))
    expect(Math.abs(printedLimitMm - limitIn * INCH)).toBeLessThanOrEqual(0.05 + 1e-9);
});

// As the table prints it: inches, and millimetres rounded to a tenth. Shown so in the app, and decided on either side of it.
const PRINTED: readonly [limit32: number, inches: string, mm: string][] = [
  [40, '1 1/4 in', '31.8 mm'],
  [44, '1 3/8 in', '34.9 mm'],
  [48, '1 1/2 in', '38.1 mm'],
  [56, '1 3/4 in', '44.5 mm'],
  [64, '2 in', '50.8 mm'],
  [72, '2 1/4 in', '57.2 mm'],
  [80, '2 1/2 in', '63.5 mm'],
  [88, '2 3/4 in', '69.9 mm'],
  [96, '3 in', '76.2 mm'],
];

test.each(PUBLISHED)('%s %s %s, rated %s is shown as printed, in inches and in millimetres', (...row) => {
  const [family, type, strokeClass, ratedStrokeMm, limit32] = row;
  const limit = limitFor(chamber(family, type, { strokeClass, ratedStrokeMm }), US_RULE_SET);
  const printed = PRINTED.find(([each]) => each === limit32);
  if (!limit.ok || !printed) throw new Error('a limit of the table');
  expect(limitText(limit.value.values, 'fraction')).toBe(printed[1]);
  expect(limitText(limit.value.values, 'mm')).toBe(printed[2]);
});

test.each(PUBLISHED)('%s %s %s, rated %s: a stroke at the limit is not over it, one past it is', (...row) => {
  const [family, type, strokeClass, ratedStrokeMm, limit32] = row;
  const limit = limitFor(chamber(family, type, { strokeClass, ratedStrokeMm }), US_RULE_SET);
  if (!limit.ok) throw new Error('a limit of the table');
  const outcome = (strokeMm: number) =>
    decideByHand({ value: strokeMm, u: 1e-6, U95: 1.96e-6 }, limit.value, US_RULE_SET).outcome;
  const limitMm = (limit32 / 32) * INCH;
  expect(outcome(limitMm - 1e-4)).toBe('within limit');
  expect(outcome(limitMm)).toBe('not decided');
  expect(outcome(limitMm + 1e-4)).toBe('over limit');
});
