/**
 * Sizes of parts as the marks give them: the clamp band's outside diameter without the diameter that was given for it, so that the
 * given one can be doubted; and the arm's length, with its stamp where somebody read it.
 *
 * Model    the adjustment gives x with variance v, and has used a given value m with s^2. What is left without it:
 *          1 / w = 1 / v - 1 / s^2, y = w (x / v - m / s^2), u = inflation sqrt(w)
 * Assumes  the equations are straight enough about the solution for what was put in to be taken out again.
 * Fails    (null) where the marks add little to what was given, as a band that is the only scale, or where a direction of view is
 *          loose: then nothing is measured.
 * Source   adding and removing an observation in least squares, common practice of adjustment computation.
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { derivedVariance } from '../adjustment/derived.ts';
import { hasLooseTilt } from '../adjustment/loose-tilt.ts';
import { ARM_LENGTH } from '../adjustment/priors.ts';
import type { WithU } from './measured.ts';
import { K95 } from './measured-from.ts';

export type Sizes = {
  readonly bandDiameterMm: WithU | null;
  /** Camshaft centre to clevis pin; null where no camshaft end is marked or the marks say too little. */
  readonly armLengthMm: WithU | null;
};

/** What was given holds more than four fifths of the weight from here on: the rest measures nothing. */
const MOST_OF_GIVEN_VARIANCE = 0.95;

export function sizesFromMarks(adjustment: Adjustment, inflation: number): Sizes {
  const { layout, problem } = adjustment;
  const { clampBand, armLength } = problem.references;
  if (hasLooseTilt(adjustment)) return { bandDiameterMm: null, armLengthMm: null };
  const at = (index: number): Adjusted => ({
    value: adjustment.best.x[index] as number,
    variance: derivedVariance(adjustment, [{ index, d: 1 }]).variance,
  });
  const arm = layout.camshaft === null ? null : at(layout.camshaft + 3);
  const band = layout.band === null ? null : at(layout.band + 1);
  const given = clampBand ? ([clampBand.diameterMm, clampBand.uDiameterMm] as const) : null;
  const bandAlone = band && given && without(band, given);
  const armAlone = armLength ? arm : arm && without(arm, ARM_LENGTH);
  return {
    bandDiameterMm: bandAlone && withU(bandAlone, inflation),
    armLengthMm: armAlone && withU(armAlone, inflation),
  };
}

type Adjusted = { readonly value: number; readonly variance: number };

function without({ value, variance }: Adjusted, [mean, sigma]: readonly [number, number]): Adjusted | null {
  if (variance > MOST_OF_GIVEN_VARIANCE * sigma ** 2) return null;
  const left = 1 / (1 / variance - 1 / sigma ** 2);
  return { value: left * (value / variance - mean / sigma ** 2), variance: left };
}

function withU({ value, variance }: Adjusted, inflation: number): WithU {
  const u = inflation * Math.sqrt(variance);
  return { value, u, U95: K95 * u };
}
