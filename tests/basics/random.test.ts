import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalCdf } from '../../src/basics/normal.ts';
import { drawFrom, UNIFORMS_OF_NORMAL } from '../../src/basics/random.ts';

const COUNT = 100_000;

function draws(count: number, next: () => number): readonly number[] {
  return Array.from({ length: count }, next);
}

function moment(values: readonly number[], power: number, about = 0): number {
  return values.reduce((sum, v) => sum + (v - about) ** power, 0) / values.length;
}

test('the same seed gives the same draws, another seed others', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
      const values = (s: number) => {
        const draw = drawFrom(s);
        return [draw.uniform(0, 1), draw.normal(0, 1), draw.uniform(2, 5), draw.normal(3, 2)];
      };
      expect(values(seed)).toEqual(values(seed));
      expect(values(seed)).not.toEqual(values(seed + 1));
    }),
  );
});

// Park, Miller, Stockmeyer (1993): the multiplier 48271, and the state after 10,000 steps from 1 is 399268537 (from memory,
// and the value that ISO C++ states for the 10,000th call of minstd_rand).
test('the generator is the published one', () => {
  const [modulus, multiplier] = [2_147_483_647n, 48_271n];
  let state = 1n;
  for (let i = 0; i < 10_000; i++) state = (state * multiplier) % modulus;
  expect(state).toBe(399_268_537n);
  const draw = drawFrom(1);
  const unit = () => draw.uniform(0, 1) * Number(modulus);
  let expected = BigInt(Math.round(unit()));
  for (let i = 0; i < 1000; i++) {
    expected = (expected * multiplier) % modulus;
    expect(Math.round(unit())).toBe(Number(expected));
  }
});

// Bounds: five standard deviations of each sample moment at 100,000 draws.
test('uniform draws fill the interval evenly', () => {
  const draw = drawFrom(7);
  const values = draws(COUNT, () => draw.uniform(-1, 3));
  expect(values.every((v) => v > -1 && v < 3)).toBe(true);
  expect(Math.abs(moment(values, 1) - 1)).toBeLessThan(5 * Math.sqrt(16 / 12 / COUNT));
  expect(Math.abs(moment(values, 2, 1) - 16 / 12)).toBeLessThan(5 * Math.sqrt(256 / 180 / COUNT));
});

test('normal draws have mean, spread, symmetry and tails of the normal distribution', () => {
  const draw = drawFrom(3);
  const values = draws(COUNT, () => draw.normal(0, 1));
  // Variances of the sample moments of a standard normal: 1, 2, 15, 96, each over the count.
  expect(Math.abs(moment(values, 1))).toBeLessThan(5 * Math.sqrt(1 / COUNT));
  expect(Math.abs(moment(values, 2) - 1)).toBeLessThan(5 * Math.sqrt(2 / COUNT));
  expect(Math.abs(moment(values, 3))).toBeLessThan(5 * Math.sqrt(15 / COUNT));
  expect(Math.abs(moment(values, 4) - 3)).toBeLessThan(5 * Math.sqrt(96 / COUNT));
  for (const x of [-3, -1.96, -1, 0, 1, 1.96, 3]) {
    const share = values.filter((v) => v < x).length / COUNT;
    const p = normalCdf(x);
    expect(Math.abs(share - p)).toBeLessThan(5 * Math.sqrt((p * (1 - p)) / COUNT));
  }
});

test('normal draws are scaled and moved as asked', () => {
  const [plain, moved] = [drawFrom(9), drawFrom(9)];
  for (let i = 0; i < 100; i++) expect(moved.normal(40, 0.5)).toBeCloseTo(40 + 0.5 * plain.normal(0, 1), 12);
});

test('one draw does not tell the next', () => {
  const draw = drawFrom(11);
  const values = draws(COUNT, () => draw.normal(0, 1));
  const lag = values.slice(1).reduce((sum, v, i) => sum + v * (values[i] as number), 0) / COUNT;
  expect(Math.abs(lag)).toBeLessThan(5 / Math.sqrt(COUNT));
});

test('any seed draws, a broken one as its whole part', () => {
  for (const seed of [-500, 0, 2_147_483_646, 9e15]) {
    const value = drawFrom(seed).uniform(0, 1);
    expect(value).toBeGreaterThan(0);
    expect(value).toBeLessThan(1);
  }
  expect(drawFrom(2.7).uniform(0, 1)).toBe(drawFrom(2).uniform(0, 1));
});

test('what is skipped is what would have been drawn', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 500 }), (seed, skipped) => {
      const draw = drawFrom(seed);
      for (let i = 0; i < skipped; i++) draw.uniform(0, 1);
      expect(drawFrom(seed, skipped).normal(0, 1)).toBe(draw.normal(0, 1));
    }),
    { numRuns: 30 },
  );
  const draw = drawFrom(7);
  for (let i = 0; i < 50; i++) draw.normal(0, 1);
  expect(drawFrom(7, 50 * UNIFORMS_OF_NORMAL).uniform(0, 1)).toBe(draw.uniform(0, 1));
});
