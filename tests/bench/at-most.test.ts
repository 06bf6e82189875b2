import { expect, test } from 'vitest';
import { atMost } from './at-most.ts';

test('none of n and all but one of n have closed forms', () => {
  for (const n of [1, 10, 32, 300, 5000]) {
    expect(atMost(0, n)).toBeCloseTo(1 - 0.05 ** (1 / n), 10);
    expect(atMost(n - 1, n)).toBeCloseTo(0.95 ** (1 / n), 10);
    expect(atMost(n, n)).toBe(1);
  }
});

/** Upper ends of the two-sided 90 % intervals of Clopper and Pearson in tables for the binomial, from memory. */
test('agrees with tables', () => {
  expect(atMost(1, 10)).toBeCloseTo(0.3942, 4);
  expect(atMost(3, 10)).toBeCloseTo(0.6066, 4);
  expect(atMost(1, 20)).toBeCloseTo(0.2161, 4);
});

test('rule of three: none of 300 shows under 1 %, none of 298 just so', () => {
  expect(atMost(0, 300)).toBeLessThan(0.01);
  expect(atMost(0, 298)).toBeGreaterThan(0.01);
});
