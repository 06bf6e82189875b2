import { expect, test } from 'vitest';
import { referenceText } from '../../../src/app/words/given.ts';
import { BAND_UNKNOWN } from '../../../src/app/work/usual-references.ts';
import { NO_REFERENCES } from '../../../src/references/reference.ts';

test('a band that nobody measured is not given a diameter', () => {
  const text = (clampBand: { readonly diameterMm: number; readonly uDiameterMm: number }) =>
    referenceText({ ...NO_REFERENCES, clampBand }, 'mm');
  expect(text(BAND_UNKNOWN)).toBe('clamp band, diameter not known');
  expect(text({ diameterMm: 205.6, uDiameterMm: 1 })).toMatch(/^clamp band 205[.,]6 mm \(u 1.0 mm\)$/);
});
