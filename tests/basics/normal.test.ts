import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalCdf, normalQuantile } from '../../src/basics/normal.ts';

// Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, P(x) (from memory, and equal to the C library's erfc).
test.each([
  [0, 0.5],
  [0.5, 0.6914624612740131],
  [1, 0.8413447460685429],
  [1.4, 0.9192433407662289],
  [2, 0.9772498680518208],
  [3, 0.9986501019683699],
])('P(%d) is as tabulated', (x, p) => {
  expect(Math.abs(normalCdf(x) - p)).toBeLessThan(1e-14);
  expect(Math.abs(normalCdf(-x) - (1 - p))).toBeLessThan(1e-14);
});

// The tail keeps its relative accuracy: values of the C library's erfc (glibc), computed separately.
test.each([
  [3.0000001, 0.0013498975884453205],
  [5, 2.866515718791946e-7],
  [6, 9.865876450377012e-10],
  [10, 7.619853024160593e-24],
  [20, 2.7536241186063314e-89],
  [37, 5.725571222525139e-300],
])('the tail beyond %d standard deviations has thirteen digits', (x, q) => {
  expect(Math.abs(normalCdf(-x) / q - 1)).toBeLessThan(1e-13);
});

// Percentage points as printed in handbook tables of the normal distribution (from memory).
test.each([
  [0.5, 0],
  [0.9, 1.2815515655446004],
  [0.95, 1.6448536269514722],
  [0.975, 1.959963984540054],
  [0.995, 2.5758293035489004],
])('the quantile of %d is as tabulated', (p, x) => {
  expect(Math.abs(normalQuantile(p) - x)).toBeLessThan(1e-12);
  expect(Math.abs(normalQuantile(1 - p) + x)).toBeLessThan(1e-12);
});

test('the quantile of the probability is the value itself', () => {
  fc.assert(
    fc.property(fc.double({ min: -37, max: 5, noNaN: true }), (x) => {
      const back = normalQuantile(normalCdf(x));
      // Above zero the probability itself is rounded near 1, which costs the quantile digits.
      const lost = x > 0 ? 2 ** -53 / (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) : 0;
      expect(Math.abs(back - x)).toBeLessThan(1e-12 * Math.max(1, Math.abs(x)) + 4 * lost);
    }),
  );
});

test('a probability of nothing or of certainty has no quantile', () => {
  expect(() => normalQuantile(0)).toThrow();
  expect(() => normalQuantile(1)).toThrow();
});
