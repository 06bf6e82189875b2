/** The regression that the judge's weights come from. */
import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { logisticFit } from '../bench/assists-paint-logistic.ts';

test('of a constant alone the fit is the logarithm of the odds', () => {
  const truths = [1, 1, 1, 0];
  const [bias] = logisticFit(
    truths.map(() => [1]),
    truths,
    truths.map(() => 1),
    0,
  );
  expect(bias).toBeCloseTo(Math.log(3), 2);
});

test('coefficients that made the truths are found again; a ridge draws them in', () => {
  const draw = drawFrom(11);
  const rows = Array.from({ length: 4000 }, () => [1, draw.normal(0, 1), draw.normal(0, 3)]);
  const truths = rows.map(([, x, y]) => {
    const z = 0.5 + 2 * (x as number) - 0.4 * (y as number);
    return draw.uniform(0, 1) < 1 / (1 + Math.exp(-z)) ? 1 : 0;
  });
  const even = truths.map(() => 1);
  const [bias, one, other] = logisticFit(rows, truths, even, 0.01) as readonly [number, number, number];
  expect(Math.abs(bias - 0.5)).toBeLessThan(0.2);
  expect(Math.abs(one - 2)).toBeLessThan(0.25);
  expect(Math.abs(other + 0.4)).toBeLessThan(0.08);
  const held = logisticFit(rows, truths, even, 2000) as readonly [number, number, number];
  expect(Math.abs(held[1])).toBeLessThan(0.5 * Math.abs(one));
});
