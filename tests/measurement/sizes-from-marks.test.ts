import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import type { Sizes } from '../../src/measurement/sizes-from-marks.ts';
import { type ReferenceKind, simulate } from '../simulation/scene.ts';

const BAND_MM = 205.58;
const ARM_MM = 139.7;

/** Simulated wheel ends with a band of type 30; what was given for it is off by this much. */
function sizes(reference: ReferenceKind, seed: number, givenOffMm = 0): Sizes {
  const { input } = simulate({ seed, reference, sigmaPx: 1, camshaft: true, bandMm: BAND_MM, armMm: ARM_MM });
  const { clampBand } = input.references;
  const given = clampBand && { ...clampBand, diameterMm: clampBand.diameterMm + givenOffMm };
  const measured = measure({ ...input, references: { ...input.references, clampBand: given } });
  if (!measured.ok) throw new Error(measured.failure.code);
  return measured.value.sizes;
}

test('a tape measures the band whatever diameter was given for it', () => {
  const SEEDS = [2, 3, 5, 6, 8, 9];
  // As given, and the diameter of a type 24 in place of a type 30: 22 mm less.
  for (const offMm of [0, -22.2]) {
    const bands = SEEDS.map((seed) => sizes('tape+band', seed, offMm).bandDiameterMm).filter((band) => band);
    expect(bands.length).toBeGreaterThanOrEqual(4);
    for (const band of bands) {
      if (!band) continue;
      expect(Math.abs(band.value - BAND_MM)).toBeLessThan(1.5 * band.U95);
      expect(band.U95).toBeLessThan(12);
      // It tells a type 30 from a type 24.
      expect(Math.abs(band.value - (BAND_MM - 22.2))).toBeGreaterThan(band.U95);
    }
  }
});

test('a band that is the only scale measures nothing of itself', () => {
  expect(sizes('clamp-band', 1).bandDiameterMm).toBeNull();
  expect(sizes('tape', 3).bandDiameterMm).toBeNull();
});

test('the arm comes out of marks at its ends, and without a camshaft end not at all', () => {
  for (const seed of [1, 2, 5]) {
    const arm = sizes('clamp-band', seed).armLengthMm;
    if (!arm) throw new Error('the arm is measured');
    expect(Math.abs(arm.value - ARM_MM)).toBeLessThan(1.5 * arm.U95);
  }
  const { input } = simulate({ seed: 1, reference: 'clamp-band', sigmaPx: 1, camshaft: false });
  const measured = measure(input);
  expect(measured.ok && measured.value.sizes.armLengthMm).toBeNull();
});
