import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import { minus } from '../../src/measurement/minus.ts';
import { simulate } from '../simulation/scene.ts';

test('independent values: uncertainties add in squares', () => {
  const difference = minus({ value: 50, u: 0.3, U95: 0.588 }, { value: 12, u: 0.4, U95: 0.784 });
  expect(difference.value).toBe(38);
  expect(difference.u).toBeCloseTo(0.5, 12);
  expect(difference.U95).toBeCloseTo(0.98, 12);
});

test('power stroke of one adjustment: stroke minus free stroke, with the u of its own covariance', () => {
  const FREE_MM = 12;
  const standardised = Array.from({ length: 12 }, (_, i) => {
    const { input, truth } = simulate({
      seed: i + 1,
      reference: 'clamp-band',
      cameraStill: true,
      sigmaPx: 1,
      freeStrokeMm: FREE_MM,
      camshaft: true,
    });
    const measured = measure(input);
    if (!measured.ok) throw new Error(measured.failure.code);
    const { strokeMm, freeStrokeMm, powerStrokeMm } = measured.value;
    if (!freeStrokeMm || !powerStrokeMm) throw new Error('there is a pulled view');
    expect(powerStrokeMm.value).toBeCloseTo(strokeMm.value - freeStrokeMm.value, 9);
    // The camera stood still and both begin at the same released pin: what they share does not count twice.
    expect(powerStrokeMm.u).toBeLessThan(minus(strokeMm, freeStrokeMm).u);
    return (powerStrokeMm.value - (truth.strokeMm - FREE_MM)) / powerStrokeMm.u;
  });
  const rms = Math.hypot(...standardised) / Math.sqrt(standardised.length);
  // Twelve draws of a standard normal have a root mean square between 0.4 and 1.7 but for one case in a thousand.
  expect(rms).toBeGreaterThan(0.4);
  expect(rms).toBeLessThan(1.7);
});
