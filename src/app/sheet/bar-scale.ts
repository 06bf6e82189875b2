/** The finding bar's scale: from zero to a little past the larger of limit and stroke with its uncertainty. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { mmFromInches } from '../../basics/units.ts';

export type BarScale = {
  readonly endMm: number;
  readonly ticks: readonly { readonly atMm: number; readonly long: boolean }[];
};

const PAST = 1.08;

/** Half inches with quarters between, or centimetres with halves between: as fine as can be told apart in the sun. */
const STEP_MM: Readonly<Record<LengthUnit, number>> = {
  fraction: mmFromInches(0.25),
  'decimal-inch': mmFromInches(0.25),
  mm: 5,
};

export function barScale(lengthsMm: readonly number[], unit: LengthUnit): BarScale {
  const stepMm = STEP_MM[unit];
  const endMm = Math.max(stepMm, ...lengthsMm) * PAST;
  const count = Math.floor(endMm / stepMm);
  const ticks = Array.from({ length: count + 1 }, (_, index) => ({
    atMm: index * stepMm,
    long: index % 2 === 0,
  }));
  return { endMm, ticks };
}
