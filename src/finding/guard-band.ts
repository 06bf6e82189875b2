/**
 * One measured value against one upper limit.
 *
 * Model    within limit only if y + k u <= L; over limit only if y - k u > L; otherwise not decided.
 *          Probability that the true value is at most L: P = Phi((L - y) / u).
 * Assumes  a normal distribution of standard uncertainty u about y, and no knowledge beforehand of where y should lie.
 *          k = 1.645: at most one chance in twenty of a wrong 'within' and of a wrong 'over'.
 * Source   JCGM 106:2012, acceptance limits with a guard band; ISO 14253-1:2017, proving either way at 95 % (from memory).
 */
import { normalCdf } from '../basics/normal.ts';
import { assert } from '../basics/result.ts';

export const GUARD_FACTOR = 1.645;

export const OUTCOMES = ['within limit', 'over limit', 'not decided'] as const;
export type Outcome = (typeof OUTCOMES)[number];

export type Judgement = {
  readonly limitMm: number;
  readonly outcome: Outcome;
  readonly guardMm: number;
  /** Probability that the true stroke is at most the limit. */
  readonly probabilityWithin: number;
};

export function judge(strokeMm: number, uMm: number, limitMm: number): Judgement {
  assert(
    Number.isFinite(strokeMm) && uMm > 0 && Number.isFinite(uMm),
    'a measured stroke has an uncertainty',
  );
  const guardMm = GUARD_FACTOR * uMm;
  const probabilityWithin = normalCdf((limitMm - strokeMm) / uMm);
  if (strokeMm + guardMm <= limitMm) return { limitMm, outcome: 'within limit', guardMm, probabilityWithin };
  if (strokeMm - guardMm > limitMm) return { limitMm, outcome: 'over limit', guardMm, probabilityWithin };
  return { limitMm, outcome: 'not decided', guardMm, probabilityWithin };
}
