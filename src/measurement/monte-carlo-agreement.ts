/**
 * Whether a stated value with its U and the trials agree.
 *
 * Model    u = c 10^l, c a whole number of the digits that are regarded as meaningful: the numerical tolerance is delta = 10^l / 2.
 *          They agree where both |y - U - y_low| and |y + U - y_high| are at most delta; [y_low, y_high] is the trials'
 *          probabilistically symmetric interval.
 * Assumes  departing from the source, whose trials go on until their ends are certain to delta / 5: the number M of trials is
 *          fixed here, and on top of delta twice the standard error is allowed that an end has by M trials where the stated
 *          distribution holds: u sqrt(p (1 - p) / M) / Z(k), p = 0.025, Z the normal density at k = 1.96.
 * Source   JCGM 101:2008, 7.9.2 and 8 (clauses from memory).
 */
import type { TrialSummary } from './monte-carlo-summary.ts';

export type Agreement = {
  readonly agree: boolean;
  /** Stated less trials: of the lower end, of the upper end. */
  readonly lowOff: number;
  readonly highOff: number;
  readonly tolerance: number;
};

/** Ten thousand trials know the ends to some hundredths of u, so one digit of u is all that can be compared. */
const MEANINGFUL_DIGITS = 1;

/** sqrt(p (1 - p)) / Z(k). */
const END_ERROR = Math.sqrt(0.025 * 0.975) / (Math.exp(-(1.96 ** 2) / 2) / Math.sqrt(2 * Math.PI));

/** perUnit: factor to the unit in whose digits u is meant, where it is not that of the values. */
export function agreementOf(
  stated: { readonly value: number; readonly u: number; readonly U95: number },
  { symmetric, trials }: Pick<TrialSummary, 'symmetric' | 'trials'>,
  { digits = MEANINGFUL_DIGITS, perUnit = 1 }: { readonly digits?: number; readonly perUnit?: number } = {},
): Agreement {
  const lowOff = stated.value - stated.U95 - symmetric.low;
  const highOff = stated.value + stated.U95 - symmetric.high;
  const tolerance =
    numericalTolerance(stated.u * perUnit, digits) / perUnit + 2 * END_ERROR * (stated.u / Math.sqrt(trials));
  const agree = Math.abs(lowOff) <= tolerance && Math.abs(highOff) <= tolerance;
  return { agree, lowOff, highOff, tolerance };
}

/** Half of the last of the meaningful digits of u. */
export function numericalTolerance(u: number, digits: number): number {
  const exponent = Number(u.toExponential(digits - 1).split('e')[1]);
  return 0.5 * 10 ** (exponent - digits + 1);
}
