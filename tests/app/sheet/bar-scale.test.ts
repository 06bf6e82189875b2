import fc from 'fast-check';
import { expect, test } from 'vitest';
import { barScale } from '../../../src/app/sheet/bar-scale.ts';
import { LENGTH_UNITS } from '../../../src/basics/length-text.ts';

test('a 2 in limit and a stroke of 1 3/4 in show ticks at every quarter inch up to 2 in', () => {
  const { ticks } = barScale([50.8, 44.45], 'fraction');
  expect(ticks).toHaveLength(9);
  expect(ticks.at(-1)?.atMm).toBeCloseTo(50.8);
  expect(ticks.at(-1)?.long).toBe(true);
});

test('the scale always reaches past everything on it, and no tick lies beyond its end', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1 }),
      fc.constantFrom(...LENGTH_UNITS),
      (lengthsMm, unit) => {
        const { endMm, ticks } = barScale(lengthsMm, unit);
        expect(endMm).toBeGreaterThan(Math.max(...lengthsMm));
        for (const { atMm } of ticks) expect(atMm).toBeLessThanOrEqual(endMm);
      },
    ),
  );
});
