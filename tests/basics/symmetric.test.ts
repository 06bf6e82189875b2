import fc from 'fast-check';
import { expect, test } from 'vitest';
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../../src/basics/symmetric.ts';
import { gram, system, times, WITHOUT_FACTOR } from './systems.ts';

// Worked by hand: 4 = 2^2; 12 = 2 x 6; 37 = 6^2 + 1^2; -16 = 2 x -8; -43 = 6 x -8 + 5; 98 = 8^2 + 5^2 + 3^2.
const A = new Float64Array([4, 12, -16, 12, 37, -43, -16, -43, 98]);
const L = new Float64Array([2, 0, 0, 6, 1, 0, -8, 5, 3]);

test('the factor of a matrix worked by hand', () => {
  expect(choleskyFactor(A, 3)).toEqual(L);
});

test('only the lower triangle is read', () => {
  const lower = new Float64Array([4, Number.NaN, Number.NaN, 12, 37, Number.NaN, -16, -43, 98]);
  expect(choleskyFactor(lower, 3)).toEqual(L);
});

// By hand: A (1, 2, 3) = (-20, -43, 192).
test('a system worked by hand', () => {
  expect([...choleskySolve(L, 3, new Float64Array([-20, -43, 192]))]).toEqual([1, 2, 3]);
});

// By hand: L^-1 = [1/2 0 0; -3 1 0; 19/3 -5/3 1/3] (its product with L is the unit matrix).
test('the inverse of the factor and of the matrix, worked by hand', () => {
  const inverse = lowerInverse(L, 3);
  [1 / 2, 0, 0, -3, 1, 0, 19 / 3, -5 / 3, 1 / 3].forEach((value, i) => {
    expect(inverse[i]).toBeCloseTo(value, 14);
  });
  const [first, corner] = [inverseFromLower(inverse, 3)[0], inverseFromLower(inverse, 3)[8]];
  expect(first).toBeCloseTo(1 / 4 + 9 + 361 / 9, 12);
  expect(corner).toBeCloseTo(1 / 9, 14);
});

test.each(WITHOUT_FACTOR)('a matrix that is %s has no factor', (_what, values) => {
  expect(choleskyFactor(new Float64Array(values), 2)).toBeNull();
});

test('an unknown that no equation holds is told, whatever the size of the others', () => {
  const held = new Float64Array([1e12, 0, 0, 0, 0, 0, 0, 0, 1e-12]);
  expect(choleskyFactor(held, 3)).toBeNull();
});

test('the solution of A x = b is the x that made b', () => {
  fc.assert(
    fc.property(system, ({ n, m, x }) => {
      const a = gram(m, n);
      const lower = choleskyFactor(a, n);
      if (!lower) throw new Error('positive definite by construction');
      const solved = choleskySolve(lower, n, new Float64Array(times(a, x, n)));
      for (let i = 0; i < n; i++)
        expect(Math.abs((solved[i] as number) - (x[i] as number))).toBeLessThan(1e-11);
    }),
  );
});

test('the inverse undoes the matrix, and is symmetric', () => {
  fc.assert(
    fc.property(system, ({ n, m, x }) => {
      const a = gram(m, n);
      const lower = choleskyFactor(a, n);
      if (!lower) throw new Error('positive definite by construction');
      const inverse = inverseFromLower(lowerInverse(lower, n), n);
      const back = times(inverse, times(a, x, n), n);
      for (let i = 0; i < n; i++) {
        expect(Math.abs((back[i] as number) - (x[i] as number))).toBeLessThan(1e-11);
        for (let j = 0; j < i; j++) expect(inverse[i * n + j]).toBe(inverse[j * n + i]);
      }
    }),
  );
});
