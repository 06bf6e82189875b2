import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chiSquareUpperTail } from '../../src/basics/chi-square.ts';
import { normalCdf } from '../../src/basics/normal.ts';

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper-tail critical values (from memory; each equal to the
// inverse survival function of a general statistics library at the printed digits).
const PROBABILITIES = [0.1, 0.05, 0.025, 0.01, 0.001] as const;
const UPPER_CRITICAL = new Map([
  [1, [2.706, 3.841, 5.024, 6.635, 10.828]],
  [2, [4.605, 5.991, 7.378, 9.21, 13.816]],
  [5, [9.236, 11.07, 12.833, 15.086, 20.515]],
  [10, [15.987, 18.307, 20.483, 23.209, 29.588]],
  [20, [28.412, 31.41, 34.17, 37.566, 45.315]],
  [30, [40.256, 43.773, 46.979, 50.892, 59.703]],
  [50, [63.167, 67.505, 71.42, 76.154, 86.661]],
  [100, [118.498, 124.342, 129.561, 135.807, 149.449]],
]);

test.each([...UPPER_CRITICAL])(
  'critical values of %i degrees of freedom are as tabulated',
  (nu, critical) => {
    critical.forEach((x, i) => {
      const p = PROBABILITIES[i] as number;
      // The table's last digit is rounded: the probability lies between those half a digit to either side.
      expect(chiSquareUpperTail(x - 0.00051, nu)).toBeGreaterThan(p);
      expect(chiSquareUpperTail(x + 0.00051, nu)).toBeLessThan(p);
    });
  },
);

// The same handbook's lower-tail critical values, ten degrees of freedom.
test.each([
  [4.865, 0.9],
  [3.94, 0.95],
  [3.247, 0.975],
  [2.558, 0.99],
  [1.479, 0.999],
])('%f is exceeded with probability %f at ten degrees of freedom', (x, p) => {
  expect(chiSquareUpperTail(x - 0.00051, 10)).toBeGreaterThan(p);
  expect(chiSquareUpperTail(x + 0.00051, 10)).toBeLessThan(p);
});

// Regularised upper incomplete gamma function in 40 digits by a general library of multiple precision, computed separately.
test.each([
  [0.01, 1, 0.920344325445942],
  [0.5, 0.3, 0.15604916709686203],
  [3, 2.5, 0.3058496294458179],
  [11, 7.7, 0.1815135507484756],
  [60, 30, 0.0009206823961486663],
  [40, 120.5, 0.9999999999996798],
  [30, 0.02, 1.9837222709023732e-10],
  [250, 100, 7.766936403539178e-15],
  [1500, 30, 3.960592528824399e-297],
])('twelve digits at %f for %f degrees of freedom, parts of one and far tails too', (x, nu, tail) => {
  expect(Math.abs(chiSquareUpperTail(x, nu) / tail - 1)).toBeLessThan(1e-12);
});

// Closed form for an even number 2 m: exp(-x/2) (1 + x/2 + ... + (x/2)^(m-1) / (m-1)!).
test('even degrees of freedom are a Poisson sum', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 1e-6, max: 400, noNaN: true }), (m, x) => {
      let term = Math.exp(-x / 2);
      let sum = term;
      for (let k = 1; k < m; k++) {
        term *= x / 2 / k;
        sum += term;
      }
      expect(Math.abs(chiSquareUpperTail(x, 2 * m) - sum)).toBeLessThan(1e-12 * sum);
    }),
    { numRuns: 1000 },
  );
});

test('one degree of freedom is the square of a normal value', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 30, noNaN: true }), (z) => {
      const both = 2 * normalCdf(-z);
      expect(Math.abs(chiSquareUpperTail(z * z, 1) - both)).toBeLessThan(1e-11 * both);
    }),
  );
});

test('a sum of nothing is exceeded for certain, an endless one never', () => {
  expect(chiSquareUpperTail(0, 3)).toBe(1);
  expect(chiSquareUpperTail(1e5, 3)).toBe(0);
});

test('a probability, and never rising with the sum', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 500, noNaN: true }),
      fc.double({ min: 0, max: 1e6, noNaN: true }),
      fc.double({ min: 0, max: 1e6, noNaN: true }),
      (nu, x, more) => {
        const [p, later] = [chiSquareUpperTail(x, nu), chiSquareUpperTail(x + more, nu)];
        expect(p).toBeLessThanOrEqual(1 + 1e-12);
        expect(later).toBeGreaterThanOrEqual(0);
        expect(later).toBeLessThanOrEqual(p * (1 + 1e-10) + 1e-14);
      },
    ),
    { numRuns: 1000 },
  );
});
