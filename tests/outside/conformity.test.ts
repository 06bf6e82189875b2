/**
 * The decision against published guard bands and the worked examples that tests/finding/decision.test.ts does not have.
 *
 * Source   ILAC-G8:09/2019, table of guard bands w = r U with U = 2 u and their probability of false acceptance (figures read in
 *          a public summary of that table, not in the document): 0.83 U (ISO 14253-1:2017) under 5 %, U under 2.5 %, 1.5 U
 *          under 0.16 %, 3 U under 1 in a million. JCGM 106:2012: the motor oil between two limits (0.66) and the
 *          speed limit (107 km/h), both from memory. The diode of JCGM 106 is in tests/finding/decision.test.ts.
 * Not      two-sided limits and risks over a lot of parts (JCGM 106, clauses 8 and 9): a stroke has one limit, and nothing is
 *          assumed beforehand of where it lies. A guard band of U itself is not our rule; it is stricter.
 */
import { describe, expect, test } from 'vitest';
import { normalCdf, normalQuantile } from '../../src/basics/normal.ts';
import { GUARD_FACTOR, judge } from '../../src/finding/guard-band.ts';

const LIMIT_MM = 50.8;
const U_MM = 0.4;
/** Expanded with k = 2, as the guides have it. */
const EXPANDED_MM = 2 * U_MM;

describe('probability of a wrong "within" at the edge of a guard band of r U', () => {
  test.each([
    [0.83, 0.05, 0.04846],
    [1, 0.025, 0.02275],
    [1.5, 0.0016, 0.00135],
    [3, 1e-6, 9.866e-10],
  ])('r = %f: under %f, by the normal table %f', (r, published, byTable) => {
    const { probabilityWithin } = judge(LIMIT_MM - r * EXPANDED_MM, U_MM, LIMIT_MM);
    expect(1 - probabilityWithin).toBeLessThan(published);
    expect((1 - probabilityWithin) / byTable).toBeCloseTo(1, 3);
  });

  test('without a guard band, at the limit, it is a half', () => {
    expect(judge(LIMIT_MM, U_MM, LIMIT_MM).probabilityWithin).toBe(0.5);
  });
});

describe('our guard band is that of 5 %', () => {
  test('1.645 u is 0.82 U: the published 0.83 U, not rounded up', () => {
    expect((GUARD_FACTOR * U_MM) / EXPANDED_MM).toBeCloseTo(0.8225, 12);
    expect(normalCdf(-GUARD_FACTOR)).toBeLessThan(0.05);
    expect(normalCdf(-GUARD_FACTOR)).toBeGreaterThan(0.0499);
  });

  test.each([
    [-0.83, 'within limit'],
    [-0.82, 'not decided'],
    [0.82, 'not decided'],
    [0.83, 'over limit'],
  ])('%f U from the limit: %s', (r, outcome) => {
    expect(judge(LIMIT_MM + r * EXPANDED_MM, U_MM, LIMIT_MM).outcome).toBe(outcome);
  });

  test('outside a guard band of U our finding is always given', () => {
    for (const r of [-1, -1.2, -3])
      expect(judge(LIMIT_MM + r * EXPANDED_MM, U_MM, LIMIT_MM).outcome).toBe('within limit');
    for (const r of [1, 1.2, 3])
      expect(judge(LIMIT_MM + r * EXPANDED_MM, U_MM, LIMIT_MM).outcome).toBe('over limit');
  });
});

describe('examples of JCGM 106 with our normal distribution', () => {
  test('motor oil, 13.6 mm2/s with u 1.8 between 12.5 and 16.3: probability 0.66', () => {
    const p = normalCdf((16.3 - 13.6) / 1.8) - normalCdf((12.5 - 13.6) / 1.8);
    expect(p).toBeCloseTo(0.66, 2);
  });

  // Two factors of the same kind as our 1.645: one chance in a thousand instead of one in twenty.
  test('speed limit 100 km/h, u 2 % of the speed, sure to 99.9 %: reject from 107 km/h', () => {
    expect(Math.round(100 / (1 - 0.02 * normalQuantile(0.999)))).toBe(107);
    expect(judge(107, 0.02 * 107, 100).outcome).toBe('over limit');
    expect(judge(107, 0.02 * 107, 100).probabilityWithin).toBeLessThan(0.001);
  });
});
