/** What is usual for references, offered so that nobody has to type it. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { mmFromInches } from '../../basics/units.ts';

/** Common practice, no source: hole centre to spline centre. */
export const USUAL_ARM_LENGTHS_MM: readonly number[] = [5, 5.5, 6, 6.5].map(mmFromInches);

/** A stamped arm length is rounded to a sixteenth or so, and pin and bushing wear moves the pin in its hole. */
export const U_ARM_STAMPED_MM = 0.8;

/** Published diameters are nominal: paint, rust and the clamp's own make are not in them. */
export const U_BAND_TABLE_MM = 1.0;

/** A caliper over a rusty band, not the caliper's own accuracy. */
export const U_BAND_CALIPER_MM = 0.3;

/** Tape or ruler read by eye between two points. */
export const U_DISTANCE_MM = 0.5;

/** Step between proposed graduations: one inch, or one centimetre. */
export function graduationStepMm(unit: LengthUnit): number {
  return unit === 'mm' ? 10 : mmFromInches(1);
}
