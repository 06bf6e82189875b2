/** What is usual for references, offered so that nobody has to type it. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { mmFromInches } from '../../basics/units.ts';
import type { References } from '../../references/reference.ts';
import { CHECK_LINE_MM } from '../../references/target-card.ts';

/** Common practice, no source: hole centre to spline centre. */
export const USUAL_ARM_LENGTHS_MM: readonly number[] = [5, 5.5, 6, 6.5].map(mmFromInches);

/** A stamped arm length is rounded to a sixteenth or so, and pin and bushing wear moves the pin in its hole. */
export const U_ARM_STAMPED_MM = 0.8;

/** Published diameters are nominal: paint, rust and the clamp's own make are not in them. */
export const U_BAND_TABLE_MM = 1.0;

/** Any common chamber's band: no scale then, but its rim still shows the direction of view. */
export const BAND_UNKNOWN = { diameterMm: 185, uDiameterMm: 30 } as const;

/** A steel rule held over the end of the pin. */
export const U_PIN_END_MM = 1.5;

/** A caliper over a rusty band, not the caliper's own accuracy. */
export const U_BAND_CALIPER_MM = 0.3;

/** Tape or ruler read by eye between two points. */
export const U_DISTANCE_MM = 0.5;

/** A print at its size, its check line read by eye on a steel rule. */
export const USUAL_TARGET: NonNullable<References['target']> = {
  checkMm: CHECK_LINE_MM,
  uCheckMm: 0.3,
  unmoved: false,
  touchesPin: false,
};

/** Step between proposed graduations: one inch, or one centimetre. */
export function graduationStepMm(unit: LengthUnit): number {
  return unit === 'mm' ? 10 : mmFromInches(1);
}
