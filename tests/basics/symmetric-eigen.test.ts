import fc from 'fast-check';
import { expect, test } from 'vitest';
import { symmetricEigen } from '../../src/basics/symmetric-eigen.ts';

// By hand: the characteristic polynomial of [2 1; 1 2] is (2 - l)^2 - 1, its roots 1 and 3, along (1, -1) and (1, 1).
test('two by two, by hand', () => {
  const { values, vectors } = symmetricEigen([2, 1, 1, 2], 2);
  expect(values[0]).toBeCloseTo(1, 14);
  expect(values[1]).toBeCloseTo(3, 14);
  expect(Math.abs(dot(vectors[0] as number[], [Math.SQRT1_2, -Math.SQRT1_2]))).toBeCloseTo(1, 14);
  expect(Math.abs(dot(vectors[1] as number[], [Math.SQRT1_2, Math.SQRT1_2]))).toBeCloseTo(1, 14);
});

// By hand: the second difference matrix of n points has the eigenvalues 2 - 2 cos(k pi / (n + 1)), k = 1 .. n.
test('second differences of six points', () => {
  const n = 6;
  const matrix = Array.from({ length: n * n }, (_, at) => {
    const apart = Math.abs(Math.floor(at / n) - (at % n));
    return apart === 0 ? 2 : apart === 1 ? -1 : 0;
  });
  symmetricEigen(matrix, n).values.forEach((value, i) => {
    expect(value).toBeCloseTo(2 - 2 * Math.cos(((i + 1) * Math.PI) / (n + 1)), 13);
  });
});

test('a matrix of nothing has zeros along the axes', () => {
  expect(symmetricEigen(new Array(9).fill(0), 3)).toEqual({
    values: [0, 0, 0],
    vectors: [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
  });
});

const symmetric = fc
  .record({ n: fc.integer({ min: 1, max: 6 }), exponent: fc.integer({ min: -12, max: 12 }) })
  .chain(({ n, exponent }) =>
    fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: n * n, maxLength: n * n }).map((m) => ({
      n,
      matrix: m.map((_v, at) => {
        const [i, j] = [Math.floor(at / n), at % n];
        return (m[Math.min(i, j) * n + Math.max(i, j)] as number) * 10 ** exponent;
      }),
    })),
  );

test('A v = l v, values ascend, vectors are orthonormal, at any scale', () => {
  fc.assert(
    fc.property(symmetric, ({ n, matrix }) => {
      const { values, vectors } = symmetricEigen(matrix, n);
      const size = Math.max(...matrix.map(Math.abs));
      for (const [i, v] of vectors.entries()) {
        const value = values[i] as number;
        if (i > 0) expect(value).toBeGreaterThanOrEqual(values[i - 1] as number);
        for (let row = 0; row < n; row++) {
          const image = dot(matrix.slice(row * n, (row + 1) * n), v);
          expect(Math.abs(image - value * (v[row] as number))).toBeLessThanOrEqual(1e-13 * size);
        }
        for (const [j, w] of vectors.entries())
          expect(Math.abs(dot(v, w) - (i === j ? 1 : 0))).toBeLessThan(1e-13);
      }
    }),
    { numRuns: 500 },
  );
});

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
}
