import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { type Sample, scatterOf, straightPieces } from '../../src/measurement/change-points.ts';

/** Sum of squares about the best line, by the normal equations, for comparison. */
function squares(samples: readonly Sample[]): number {
  const n = samples.length;
  const [mt, my] = [samples.reduce((s, { t }) => s + t, 0) / n, samples.reduce((s, { y }) => s + y, 0) / n];
  const stt = samples.reduce((s, { t }) => s + (t - mt) ** 2, 0);
  const sty = samples.reduce((s, { t, y }) => s + (t - mt) * (y - my), 0);
  return samples.reduce((s, { t, y }) => s + (y - my - (sty / stt) * (t - mt)) ** 2, 0);
}

/** The least price of any cut into pieces of two and more, all of them tried. */
function leastOf(samples: readonly Sample[], price: number): number {
  const n = samples.length;
  if (n === 0) return -price;
  let least = Number.POSITIVE_INFINITY;
  for (let last = 2; last <= n; last++)
    if (n - last !== 1)
      least = Math.min(
        least,
        leastOf(samples.slice(0, n - last), price) + squares(samples.slice(n - last)) + price,
      );
  return least;
}

test('no other cut is cheaper', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 4, maxLength: 11 }),
      (values) => {
        const samples = values.map((y, t) => ({ t, y }));
        const price = 3 * Math.log(samples.length);
        const pieces = straightPieces(samples, 1);
        const cost = pieces.reduce(
          (sum, { from, to }) => sum + squares(samples.slice(from, to + 1)) + price,
          -price,
        );
        expect(cost).toBeCloseTo(leastOf(samples, price), 6);
      },
    ),
    { numRuns: 60, seed: 7 },
  );
});

test('pieces follow one another and leave nothing out', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 2, maxLength: 80 }),
      (values) => {
        const pieces = straightPieces(
          values.map((y, t) => ({ t, y })),
          0.5,
        );
        expect(pieces[0]?.from).toBe(0);
        expect(pieces.at(-1)?.to).toBe(values.length - 1);
        for (const [i, piece] of pieces.slice(1).entries()) expect(piece.from).toBe((pieces[i]?.to ?? 0) + 1);
      },
    ),
    { numRuns: 100, seed: 7 },
  );
});

test('a rest, a ramp and a rest are found to a sample, and not one piece more', () => {
  const draw = drawFrom(3);
  const course = (i: number) => (i < 40 ? 0 : i < 55 ? 3 * (i - 40) : 45);
  const samples = Array.from({ length: 120 }, (_, i) => ({ t: i / 30, y: course(i) + draw.normal(0, 0.2) }));
  const pieces = straightPieces(samples, 0.2);
  expect(pieces.length).toBe(3);
  expect(Math.abs((pieces[1]?.from ?? 0) - 40)).toBeLessThanOrEqual(1);
  expect(Math.abs((pieces[2]?.from ?? 0) - 55)).toBeLessThanOrEqual(1);
  expect(pieces[1]?.slope).toBeCloseTo(90, -1);
});

test('scatter is told whatever the course', () => {
  const draw = drawFrom(5);
  const samples = Array.from({ length: 2000 }, (_, i) => ({ t: i, y: 0.05 * i + draw.normal(0, 0.3) }));
  expect(scatterOf(samples)).toBeCloseTo(0.3, 1);
  expect(scatterOf(samples.slice(0, 2))).toBe(0);
});
