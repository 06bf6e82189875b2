import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  inverseForm,
  roomForFactor,
  type SparseFactor,
  sparseFactor,
  sparseSolve,
} from '../../src/basics/sparse-symmetric.ts';
import { gram, system, times, WITHOUT_FACTOR } from './systems.ts';

// Worked by hand from the last unknown back: 4 = 2^2; 12 = 2 x 6; 37 = 6^2 + 1^2; -16 = 2 x -8; -43 = 6 x -8 + 5;
// 98 = 8^2 + 5^2 + 3^2. So M = [3 0 0; 5 1 0; -8 6 2], A = M^T M.
const A = new Float64Array([98, -43, -16, -43, 37, 12, -16, 12, 4]);

test('the factor of a matrix worked by hand', () => {
  expect(dense(factorOf(A, 3))).toEqual([3, 0, 0, 5, 1, 0, -8, 6, 2]);
});

test('only the lower triangle is read', () => {
  const lower = new Float64Array([98, Number.NaN, Number.NaN, -43, 37, Number.NaN, -16, 12, 4]);
  expect(dense(factorOf(lower, 3))).toEqual([3, 0, 0, 5, 1, 0, -8, 6, 2]);
});

// By hand: A (3, 2, 1) = (192, -43, -20).
test('a system worked by hand', () => {
  expect([...sparseSolve(factorOf(A, 3), new Float64Array([192, -43, -20]))]).toEqual([3, 2, 1]);
});

// By hand: M^T y = e1 has y = (1/3, 0, 0); M^T y = e3 has y = (19/3, -3, 1/2).
test('quadratic forms in the inverse, worked by hand', () => {
  const factor = factorOf(A, 3);
  expect(inverseForm(factor, new Float64Array([1, 0, 0]))).toBeCloseTo(1 / 9, 14);
  expect(inverseForm(factor, new Float64Array([0, 0, 1]))).toBeCloseTo(1 / 4 + 9 + 361 / 9, 12);
});

// Every one of the last three unknowns shares equations with the first two only, so no elimination brings them together.
test('unknowns that stand last and do not know each other leave nothing among them', () => {
  const a = [9, 0, 0, 0, 0, 1, 9, 0, 0, 0, 1, 2, 9, 0, 0, 2, 1, 0, 9, 0, 1, 1, 0, 0, 9];
  const m = dense(factorOf(new Float64Array(a), 5));
  expect([m[17], m[22], m[23]]).toEqual([0, 0, 0]);
  expect(m.filter((value) => value !== 0).length).toBe(5 + 7);
});

test('damping raises the diagonal by its share, before any elimination', () => {
  const damped = A.map((value, at) => (at % 4 === 0 ? 1.5 * value : value));
  expect(dense(factorOf(A, 3, 0.5))).toEqual(dense(factorOf(damped, 3)));
});

test('room of one factor serves the next', () => {
  const room = factorOf(new Float64Array([5, 0, 0, 1, 6, 0, 0, 2, 7]), 3);
  expect(sparseFactor(A, 3, room)).toBe(room);
  expect(dense(room)).toEqual([3, 0, 0, 5, 1, 0, -8, 6, 2]);
});

function factorOf(a: Float64Array, n: number, damping = 0): SparseFactor {
  const factor = sparseFactor(a, n, roomForFactor(n), damping);
  if (!factor) throw new Error('positive definite by construction');
  return factor;
}

/** M row by row, n x n. */
function dense({ n, diagonal, rowEnds, columns, values }: SparseFactor): number[] {
  const m = new Array<number>(n * n).fill(0);
  for (let k = 0; k < n; k++) {
    m[k * n + k] = diagonal[k] as number;
    for (let p = rowEnds[k + 1] as number; p < (rowEnds[k] as number); p++)
      m[k * n + (columns[p] as number)] = values[p] as number;
  }
  return m;
}

test.each(WITHOUT_FACTOR)('a matrix that is %s has no factor', (_what, values) => {
  expect(sparseFactor(new Float64Array(values), 2)).toBeNull();
});

test('an unknown that no equation holds is told, whatever the size of the others', () => {
  const held = new Float64Array([1e12, 0, 0, 0, 0, 0, 0, 0, 1e-12]);
  expect(sparseFactor(held, 3)).toBeNull();
});

test('the solution of A x = b is the x that made b', () => {
  fc.assert(
    fc.property(system, ({ n, m, x }) => {
      const a = gram(m, n);
      const solved = sparseSolve(factorOf(a, n), new Float64Array(times(a, x, n)));
      for (let i = 0; i < n; i++)
        expect(Math.abs((solved[i] as number) - (x[i] as number))).toBeLessThan(1e-11);
    }),
  );
});

test('a quadratic form in the inverse is x . A x for the x that makes b', () => {
  fc.assert(
    fc.property(system, ({ n, m, x }) => {
      const a = gram(m, n);
      const b = times(a, x, n);
      const expected = b.reduce((sum, value, i) => sum + value * (x[i] as number), 0);
      expect(Math.abs(inverseForm(factorOf(a, n), new Float64Array(b)) - expected)).toBeLessThan(1e-11);
    }),
  );
});
