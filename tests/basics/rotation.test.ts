import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cross,
  IDENTITY3,
  leftJacobian,
  type Mat3,
  multiply,
  rotate,
  rotationAbout,
  rotationFromVector,
  transpose,
  type Vec3,
} from '../../src/basics/rotation.ts';

/** Evenly between the two: fast-check's doubles crowd about zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((n) => min + ((max - min) * n) / 1e6);

const vector = (most: number) => fc.tuple(evenly(-most, most), evenly(-most, most), evenly(-most, most));

/** Rotation vectors of every size, so that the series near zero and the closed form meet in the trials. */
const rotationVector = fc
  .tuple(vector(1), evenly(-6, 0.5))
  .map(([v, exponent]) => v.map((c) => c * 10 ** exponent) as unknown as Vec3);

function farthest(a: ArrayLike<number>, b: ArrayLike<number>): number {
  return Math.max(...Array.from(a, (value, i) => Math.abs(value - (b[i] as number))));
}

// By hand: a quarter turn about each axis.
test.each([
  [0, [0, 1, 0], [0, 0, 1]],
  [1, [0, 0, 1], [1, 0, 0]],
  [2, [1, 0, 0], [0, 1, 0]],
] as const)('a quarter turn about axis %i takes the next axis to the one after', (axis, from, to) => {
  expect(farthest(rotate(rotationAbout(axis, Math.PI / 2), from), to)).toBeLessThan(1e-15);
});

// By hand: a third of a turn about (1, 1, 1) takes x to y, y to z, z to x.
test('a third of a turn about the diagonal exchanges the axes', () => {
  const third = (2 * Math.PI) / 3 / Math.sqrt(3);
  expect(farthest(rotationFromVector([third, third, third]), [0, 0, 1, 1, 0, 0, 0, 1, 0])).toBeLessThan(
    1e-15,
  );
});

test('a rotation matrix is orthonormal, right handed, and keeps its own axis', () => {
  fc.assert(
    fc.property(rotationVector, (w) => {
      const r = rotationFromVector(w);
      expect(farthest(multiply(r, transpose(r)), IDENTITY3)).toBeLessThan(1e-14);
      const [x, y, z] = [0, 1, 2].map((j) => [r[j], r[j + 3], r[j + 6]] as unknown as Vec3) as [
        Vec3,
        Vec3,
        Vec3,
      ];
      expect(farthest(cross(x, y), z)).toBeLessThan(1e-14);
      expect(farthest(rotate(r, w), w)).toBeLessThan(1e-14 * Math.max(1, Math.hypot(...w)));
    }),
    { numRuns: 500 },
  );
});

test('turning half and half again is turning once', () => {
  fc.assert(
    fc.property(rotationVector, (w) => {
      const half = rotationFromVector([w[0] / 2, w[1] / 2, w[2] / 2]);
      expect(farthest(multiply(half, half), rotationFromVector(w))).toBeLessThan(1e-13);
    }),
    { numRuns: 500 },
  );
});

// Definition of the left Jacobian: R(w + d) = R(J(w) d) R(w) to first order in d.
test('the left Jacobian is the numeric one', () => {
  fc.assert(
    fc.property(rotationVector, vector(5), (w, point) => {
      const jacobian = leftJacobian(w);
      const turned = rotate(rotationFromVector(w), point);
      const step = 1e-5;
      for (const k of [0, 1, 2] as const) {
        const moved = (sign: number) =>
          rotate(
            rotationFromVector(w.map((c, i) => c + (i === k ? sign * step : 0)) as unknown as Vec3),
            point,
          );
        const [up, down] = [moved(1), moved(-1)];
        const numeric = up.map((c, i) => (c - (down[i] as number)) / (2 * step));
        const column: Vec3 = [jacobian[k], jacobian[k + 3] as number, jacobian[k + 6] as number];
        expect(farthest(cross(column, turned), numeric)).toBeLessThan(1e-8);
      }
    }),
    { numRuns: 500 },
  );
});

test('near zero rotation and Jacobian run on without a step', () => {
  for (const size of [0.99999e-4, 1.00001e-4]) {
    const w: Vec3 = [size * 0.6, 0, size * 0.8];
    const c: Mat3 = [0, -w[2], w[1], w[2], 0, -w[0], -w[1], w[0], 0];
    const squared = multiply(c, c);
    const [r, j] = [rotationFromVector(w), leftJacobian(w)];
    IDENTITY3.forEach((one, i) => {
      expect(Math.abs((r[i] as number) - one - (c[i] as number) - (squared[i] as number) / 2)).toBeLessThan(
        1e-12,
      );
      expect(
        Math.abs((j[i] as number) - one - (c[i] as number) / 2 - (squared[i] as number) / 6),
      ).toBeLessThan(1e-12);
    });
  }
});
