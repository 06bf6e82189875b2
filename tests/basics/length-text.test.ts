import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  formatLength,
  formatLengthDown,
  formatLengthUp,
  formatLengthWithU,
  LENGTH_UNITS,
  type LengthUnit,
  parseLength,
} from '../../src/basics/length-text.ts';

const INCH = 25.4; // The international inch, exactly (ISO 31 / NIST SP 811, from memory).

test.each<[number, LengthUnit, string]>([
  [2.0625 * INCH, 'fraction', '2 1/16 in'],
  [2.0625 * INCH, 'decimal-inch', '2.063 in'],
  [2.0625 * INCH, 'mm', '52.4 mm'],
  [2 * INCH, 'fraction', '2 in'],
  [2.5 * INCH, 'fraction', '2 1/2 in'],
  [0.625 * INCH, 'fraction', '5/8 in'],
  [0, 'fraction', '0 in'],
  [1.999 * INCH, 'fraction', '2 in'],
  [-0.0625 * INCH, 'fraction', '-1/16 in'],
  [-0.01, 'mm', '0.0 mm'],
  [-0.4, 'fraction', '0 in'],
])('%f mm in %s is %s', (mm, unit, text) => {
  expect(formatLength(mm, unit)).toBe(text);
});

test.each<[number, LengthUnit, string, string]>([
  [1.97 * INCH, 'fraction', '1 15/16 in', '2 in'],
  [2 * INCH, 'fraction', '2 in', '2 in'],
  [50.74, 'mm', '50.7 mm', '50.8 mm'],
  [1.9999 * INCH, 'decimal-inch', '1.999 in', '2.000 in'],
])('%f mm in %s lies between %s and %s', (mm, unit, down, up) => {
  expect(formatLengthDown(mm, unit)).toBe(down);
  expect(formatLengthUp(mm, unit)).toBe(up);
});

// 49 CFR 393.47(e)(1) prints these millimetres beside these inches: the half steps go up.
test.each([
  [1.25, '31.8 mm'],
  [1.375, '34.9 mm'],
  [1.75, '44.5 mm'],
  [2, '50.8 mm'],
  [2.25, '57.2 mm'],
  [2.5, '63.5 mm'],
  [2.75, '69.9 mm'],
  [3, '76.2 mm'],
])('%f in is shown as the regulation prints it, %s', (inches, text) => {
  expect(formatLength(inches * INCH, 'mm')).toBe(text);
});

test.each<[number, number, LengthUnit, string]>([
  [52.4, 0.31, 'mm', '52.4 ± 0.4 mm'],
  [52.4, 0.3, 'mm', '52.4 ± 0.3 mm'],
  [52.4, 0.7, 'mm', '52.4 ± 0.7 mm'],
  [52.4, 1.1, 'mm', '52.4 ± 1.1 mm'],
  [52.4, 0.0001, 'mm', '52.4 ± 0.1 mm'],
  [2.0625 * INCH, 0.3, 'fraction', '2 1/16 ± 1/16 in'],
  [2.0625 * INCH, INCH / 16, 'fraction', '2 1/16 ± 1/16 in'],
  [2.0625 * INCH, 1.6, 'fraction', '2 1/16 ± 1/8 in'],
  [2.0625 * INCH, 0.3, 'decimal-inch', '2.063 ± 0.012 in'],
])('%f with U %f in %s is %s', (mm, U, unit, text) => {
  expect(formatLengthWithU(mm, U, unit)).toBe(text);
});

test('U is never shown smaller than it is, nor by more than a step larger', () => {
  const step: Record<LengthUnit, number> = { fraction: INCH / 16, 'decimal-inch': INCH / 1000, mm: 0.1 };
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 500, noNaN: true }),
      fc.constantFrom(...LENGTH_UNITS),
      (U, unit) => {
        const shown = parseLength(formatLengthWithU(0, U, unit).split('± ')[1] ?? '', 'mm');
        expect(shown.ok).toBe(true);
        if (!shown.ok) return;
        expect(shown.value).toBeGreaterThan(U - 1e-6);
        expect(shown.value).toBeLessThan(U + step[unit] + 1e-6);
      },
    ),
  );
});

test.each<[string, LengthUnit, number]>([
  ['11 1/4', 'fraction', 11.25 * INCH],
  ['11-1/4', 'fraction', 11.25 * INCH],
  ['11 1/4"', 'mm', 11.25 * INCH],
  ['11 1/4 in.', 'mm', 11.25 * INCH],
  ['11\u20131/4\u2033', 'mm', 11.25 * INCH],
  ['11¼', 'fraction', 11.25 * INCH],
  ["11 1/4''", 'mm', 11.25 * INCH],
  ['  5/8  ', 'decimal-inch', 0.625 * INCH],
  ['11.25', 'fraction', 11.25 * INCH],
  ['11.25', 'decimal-inch', 11.25 * INCH],
  ['11.25', 'mm', 11.25],
  ['2.5 in', 'mm', 2.5 * INCH],
  ['2.5 Inches', 'mm', 2.5 * INCH],
  ['57 mm', 'fraction', 57],
  ['57MM', 'fraction', 57],
  ['57,2 mm', 'fraction', 57.2],
  ['.5', 'mm', 0.5],
  ['0,250', 'decimal-inch', 0.25 * INCH],
  ['7.', 'mm', 7],
])('reads %s with %s as default', (text, unit, mm) => {
  const length = parseLength(text, unit);
  expect(length.ok).toBe(true);
  if (length.ok) expect(length.value).toBeCloseTo(mm, 9);
});

test.each<[string, LengthUnit, string]>([
  ['', 'mm', 'length-text/empty'],
  ['   ', 'mm', 'length-text/empty'],
  ['two', 'mm', 'length-text/not-a-length'],
  ['-1/4', 'fraction', 'length-text/negative'],
  ['\u22122 mm', 'mm', 'length-text/negative'],
  ['1/0', 'fraction', 'length-text/denominator'],
  ['11 1/3', 'fraction', 'length-text/denominator'],
  ['111/4', 'fraction', 'length-text/improper-fraction'],
  ['11 4/4', 'fraction', 'length-text/improper-fraction'],
  ['5/8', 'mm', 'length-text/fraction-of-mm'],
  ['5/8 mm', 'fraction', 'length-text/fraction-of-mm'],
  ['1,250', 'mm', 'length-text/comma-ambiguous'],
  ['5.7 cm', 'mm', 'length-text/unknown-unit'],
  ["1'", 'fraction', 'length-text/unknown-unit'],
  ['1\' 2"', 'fraction', 'length-text/not-a-length'],
  ['11 1/4 1/8', 'fraction', 'length-text/not-a-length'],
  ['14 3/8 - 11 1/4', 'fraction', 'length-text/not-a-length'],
  ['11 -1/4', 'fraction', 'length-text/not-a-length'],
  ['1.2.3', 'mm', 'length-text/not-a-length'],
  ['1e3', 'mm', 'length-text/not-a-length'],
  ['Infinity', 'mm', 'length-text/not-a-length'],
  ['123456789', 'mm', 'length-text/not-a-length'],
  ['0x10', 'mm', 'length-text/not-a-length'],
  ['1/2/4', 'fraction', 'length-text/not-a-length'],
])('refuses %j with %s as default: %s', (text, unit, code) => {
  expect(parseLength(text, unit)).toMatchObject({ ok: false, failure: { code } });
});

test('what is shown is read back to half a step, and shown again as the same text', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 900, noNaN: true }),
      fc.constantFrom(...LENGTH_UNITS),
      (mm, unit) => {
        const text = formatLength(mm, unit);
        for (const other of LENGTH_UNITS) {
          const back = parseLength(text, other);
          expect(back.ok).toBe(true);
          if (!back.ok) return;
          expect(Math.abs(back.value - mm)).toBeLessThanOrEqual(
            unit === 'fraction' ? INCH / 32 + 1e-6 : 0.051,
          );
          expect(formatLength(back.value, unit)).toBe(text);
        }
      },
    ),
  );
});

test('no text makes it throw or give anything but a length of zero or more', () => {
  const signs = fc.constantFrom(...'0123456789 ./,-"\'inm½⅞\u2033');
  fc.assert(
    fc.property(fc.string({ unit: signs, maxLength: 12 }), fc.constantFrom(...LENGTH_UNITS), (text, unit) => {
      const length = parseLength(text, unit);
      if (length.ok) expect(length.value >= 0 && Number.isFinite(length.value)).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
