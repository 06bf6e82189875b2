import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import type { CurvePoint } from '../../src/measurement/clip-measurement.ts';
import { firstPassing } from '../../src/measurement/passing.ts';

const curveOf = (values: readonly (number | null)[], u: number): readonly CurvePoint[] =>
  values.map((value, i) => ({
    timeS: i / 10,
    stroke: value === null ? null : { value, u },
    armAngleRad: null,
  }));
const stroke = (point: CurvePoint) => point.stroke;
const all = { from: 0, to: 1000 };

test('worked by hand: between 0 and 10 at 0.1 and 0.2 s, 2.5 is passed at 0.125 s', () => {
  const passing = firstPassing(curveOf([0, 0, 10, 10], 0.1), all, { value: 2.5, u: 0 }, 1, stroke);
  expect(passing?.value).toBeCloseTo(0.125, 12);
  expect(passing?.u).toBeCloseTo(0.1 / Math.sqrt(12), 12);
  expect(passing?.frame).toBe(1);
});

test('a gap makes it less certain, a level not passed is none', () => {
  const gap = firstPassing(curveOf([0, 0, null, null, 10, 10], 0.1), all, { value: 5, u: 0 }, 1, stroke);
  expect(gap?.u).toBeCloseTo(0.3 / Math.sqrt(12), 12);
  expect(firstPassing(curveOf([0, 1, 2], 0.1), all, { value: 5, u: 0 }, 1, stroke)).toBeNull();
  expect(firstPassing(curveOf([9, 5, 1], 0.1), all, { value: 4, u: 0 }, -1, stroke)?.value).toBeCloseTo(
    0.125,
    6,
  );
});

test('what is not known of the level is not known of the time: 1 mm at 10 mm/s is 0.1 s', () => {
  const ramp = Array.from({ length: 20 }, (_, i) => i);
  const passing = firstPassing(curveOf(ramp, 1e-6), all, { value: 7.3, u: 1 }, 1, stroke);
  expect(passing?.value).toBeCloseTo(0.73, 3);
  expect(passing?.u).toBeCloseTo(Math.hypot(0.1, 0.1 / Math.sqrt(12)), 6);
});

test('noise about a slow passing neither brings it forward nor is left out of u', () => {
  let [sum, held] = [0, 0];
  for (let seed = 1; seed <= 300; seed++) {
    const draw = drawFrom(seed);
    const values = Array.from({ length: 100 }, (_, i) => 0.1 * i + draw.normal(0, 0.3));
    const passing = firstPassing(curveOf(values, 0.3), all, { value: 5, u: 0 }, 1, stroke);
    const error = (passing?.value ?? 0) - 5;
    sum += error;
    if (Math.abs(error) < 2 * (passing?.u ?? 0)) held++;
  }
  expect(Math.abs(sum / 300)).toBeLessThan(0.1);
  expect(held).toBeGreaterThan(280);
});
