import { expect, test } from 'vitest';
import { adviceFor } from '../../src/measurement/advice.ts';
import { measure } from '../../src/measurement/measure.ts';
import { simulate } from '../simulation/scene.ts';

const options = { seed: 21, sigmaPx: 1, rodMarks: true, distanceMm: [700, 760] } as const;

test('two hand-held pictures with a tape are told to take the clamp band, and what they are told comes true', () => {
  const withTape = simulate({ ...options, reference: 'tape' });
  const present = measure(withTape.input);
  const [best] = adviceFor(withTape.input);
  expect(best?.proposal).toBe('clamp-band');
  // The same wheel end, pictures and marks' noise, with the band really marked.
  const withBand = measure(simulate({ ...options, reference: 'tape+band' }).input);
  if (!present.ok || !withBand.ok || !best) throw new Error('not measured');
  expect(best.U95Mm).toBeLessThan(present.value.strokeMm.U95);
  expect(best.U95Mm / withBand.value.strokeMm.U95).toBeGreaterThan(0.6);
  expect(best.U95Mm / withBand.value.strokeMm.U95).toBeLessThan(1.6);
});

test('an unmarked camshaft end is not proposed where nothing shows where it is, and nothing is proposed without a measurement', () => {
  const bare = simulate({ ...options, reference: 'tape', camshaft: false, rodMarks: false });
  expect(adviceFor(bare.input).map(({ proposal }) => proposal)).not.toContain('camshaft-end');
  expect(adviceFor({ ...bare.input, views: [] })).toEqual([]);
});

test('best first, and every one of use', () => {
  const { input } = simulate({ ...options, reference: 'arm-length' });
  const present = measure(input);
  if (!present.ok) throw new Error('not measured');
  const advice = adviceFor(input);
  expect(advice.length).toBeGreaterThan(1);
  const us = advice.map(({ U95Mm }) => U95Mm);
  expect(us).toEqual(us.toSorted((a, b) => a - b));
  expect(Math.max(...us)).toBeLessThan(present.value.strokeMm.U95);
});
