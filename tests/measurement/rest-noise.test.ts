import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { restNoise, slopeWeights, uOfMean, uOfSlope } from '../../src/measurement/rest-noise.ts';

const times = (n: number, interval: number) =>
  Array.from({ length: n }, (_, i) => ({ t: i * interval, y: 0 }));

test('worked by hand: noise that is new in every frame', () => {
  // u of a mean of n is sigma / sqrt(n); of a slope over 0, 1, .. n - 1: sigma sqrt(12 / (n (n^2 - 1))). JCGM 100:2008, 4.2.3 (from
  // memory); the sum of squares about the mean of 0 .. n - 1 is n (n^2 - 1) / 12.
  const rest = times(9, 1);
  expect(uOfMean(rest, { white: 0.3, slow: 0 })).toBeCloseTo(0.1, 12);
  expect(uOfSlope(rest, { white: 0.3, slow: 0 })).toBeCloseTo(0.3 * Math.sqrt(12 / (9 * 80)), 12);
});

test('the same by the whole matrix of correlations', () => {
  const rest = times(7, 0.2);
  const weights = slopeWeights(rest);
  let square = 0;
  for (const [i, a] of weights.entries())
    for (const [j, b] of weights.entries()) square += a * b * Math.exp(-Math.abs(i - j) * 0.2);
  expect(uOfSlope(rest, { white: 0, slow: 2 })).toBeCloseTo(2 * Math.sqrt(square), 12);
});

test('many alike values count for one: the mean is hardly better than each', () => {
  expect(uOfMean(times(100, 1e-4), { white: 0, slow: 1 })).toBeCloseTo(1, 1);
});

/** Three rests of 1.5 s, half of the variance alike for half a second. */
function drawnRests(seed: number) {
  const draw = drawFrom(seed);
  const keep = Math.exp(-1 / 30 / 0.5);
  return [0, 1, 2].map(() => {
    let slow = draw.normal(0, 1);
    return Array.from({ length: 45 }, (_, i) => {
      slow = keep * slow + Math.sqrt(1 - keep * keep) * draw.normal(0, 1);
      return { t: i / 30, y: Math.SQRT1_2 * (slow + draw.normal(0, 1)) };
    });
  });
}

test('two u hold mean and slope in nine of ten and more, half of it does not', () => {
  const held = { mean: 0, slope: 0, half: 0 };
  for (let seed = 1; seed <= 300; seed++) {
    const rests = drawnRests(seed);
    const noise = restNoise(rests);
    const rest = rests[0] ?? [];
    const slope = slopeWeights(rest).reduce((sum, a, i) => sum + a * (rest[i]?.y ?? 0), 0);
    const mean = rest.reduce((sum, { y }) => sum + y, 0) / rest.length;
    if (Math.abs(mean) < 2 * uOfMean(rest, noise)) held.mean++;
    if (Math.abs(slope) < 2 * uOfSlope(rest, noise)) held.slope++;
    if (Math.abs(slope) < 0.5 * uOfSlope(rest, noise)) held.half++;
  }
  expect(held.mean).toBeGreaterThan(270);
  expect(held.slope).toBeGreaterThan(270);
  expect(held.half).toBeLessThan(200);
});

test('nothing seen tells nothing', () => expect(restNoise([[], times(2, 1)])).toEqual({ white: 0, slow: 0 }));
