import { expect, test } from 'vitest';
import { fitCircle } from '../../src/vision/fit-circle.ts';

const on = (turnRad: number, radius: number, weight = 1) => ({
  at: [3 + radius * Math.cos(turnRad), -2 + radius * Math.sin(turnRad)] as const,
  weight,
});
const START = { centre: [2, -1], radius: 6 } as const;

test('a circle is found through its points, whatever two of them far off say', () => {
  const good = Array.from({ length: 20 }, (_, i) => on(0.3 * i, 7));
  const fit = fitCircle([...good, on(0.4, 8.5), on(2.2, 5)], START);
  expect(fit?.centre[0]).toBeCloseTo(3, 6);
  expect(fit?.centre[1]).toBeCloseTo(-2, 6);
  expect(fit?.radius).toBeCloseTo(7, 6);
  expect(fit?.kept.slice(-2)).toEqual([0, 0]);
  // Those far off are in it: (1.5^2 + 2^2) / 22.
  expect(fit?.rms).toBeCloseTo(Math.sqrt(6.25 / 22), 6);
});

test('what weighs little draws little', () => {
  // Small enough to be kept: both halves of the way contradict each other by 0.1.
  const near = Array.from({ length: 12 }, (_, i) => on((Math.PI * i) / 12, 7));
  const far = (weight: number) =>
    Array.from({ length: 12 }, (_, i) => on(Math.PI + (Math.PI * i) / 12, 7.1, weight));
  const drawn = (weight: number) => fitCircle([...near, ...far(weight)], START)?.radius ?? Number.NaN;
  expect(drawn(1)).toBeGreaterThan(7.03);
  expect(drawn(1e-6)).toBeLessThan(7.001);
});

test('two places leave a circle open', () => {
  expect(fitCircle([on(0, 7), on(1, 7)], START)).toBeNull();
});
