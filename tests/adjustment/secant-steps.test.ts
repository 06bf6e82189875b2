import { expect, test } from 'vitest';
import { product, SecantSteps } from '../../src/adjustment/secant-steps.ts';
import { sparseFactor } from '../../src/basics/sparse-symmetric.ts';

/** The sum's second derivatives, and a matrix that takes two of them for others. */
const TRUE = [
  [4, 1, 0],
  [1, 3, 1],
  [0, 1, 2],
];
const SUPPOSED = Float64Array.of(4, 0, 0, 0, 1, 0, 0, 0, 16);

const slopeAt = (x: Float64Array): Float64Array =>
  Float64Array.from(TRUE, (row) => row.reduce((sum, value, i) => sum + value * (x[i] as number), 0));

function begun(): SecantSteps {
  const factor = sparseFactor(SUPPOSED, 3);
  if (!factor) throw new Error('singular');
  return new SecantSteps(factor);
}

test('with nothing learnt the step is that of the matrix', () => {
  expect([...begun().step(Float64Array.of(4, 1, 16))]).toEqual([1, 1, 1]);
});

test('what a step did to the slope is undone by the same step', () => {
  const secant = begun();
  const [from, to] = [Float64Array.of(1, -2, 1), Float64Array.of(0.5, 1, -1)];
  secant.learn({ x: from, gradient: slopeAt(from) }, { x: to, gradient: slopeAt(to) });
  const change = slopeAt(to).map((g, i) => g - (slopeAt(from)[i] as number));
  secant.step(change).forEach((s, i) => {
    expect(s).toBeCloseTo((to[i] as number) - (from[i] as number), 12);
  });
});

test('whole steps end at the minimum of a parabola that the matrix does not know', () => {
  const secant = begun();
  let x = Float64Array.of(1, -2, 1) as Float64Array;
  let slope = slopeAt(x);
  for (let k = 0; k < 9; k++) {
    const step = secant.step(slope);
    const to = x.map((value, i) => value - (step[i] as number));
    secant.learn({ x, gradient: slope }, { x: to, gradient: slopeAt(to) });
    [x, slope] = [to, slopeAt(to)];
  }
  expect(Math.sqrt(product(x, x))).toBeLessThan(1e-6);
});

test('where the slope did not rise along the step nothing is learnt', () => {
  const secant = begun();
  const x = Float64Array.of(0, 0, 0);
  secant.learn({ x, gradient: x }, { x: Float64Array.of(1, 0, 0), gradient: Float64Array.of(-1, 0, 0) });
  expect([...secant.step(Float64Array.of(4, 1, 16))]).toEqual([1, 1, 1]);
});
