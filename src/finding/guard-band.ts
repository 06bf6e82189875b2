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

/** How far to either side of a stroke of standard uncertainty u its finding reckons, mm. */
export const guardMmOf = (uMm: number): number => GUARD_FACTOR * uMm;

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
  const guardMm = guardMmOf(uMm);
  const probabilityWithin = normalCdf((limitMm - strokeMm) / uMm);
  if (strokeMm + guardMm <= limitMm) return { limitMm, outcome: 'within limit', guardMm, probabilityWithin };
  if (strokeMm - guardMm > limitMm) return { limitMm, outcome: 'over limit', guardMm, probabilityWithin };
  return { limitMm, outcome: 'not decided', guardMm, probabilityWithin };
}

export type DecidingBound = { readonly is: 'at most' | 'at least'; readonly mm: number };

/** The end of the guard band that faces the limit and lies clear of it; null where none does. */
export function decidingBound(
  outcome: Outcome,
  { value, u }: { readonly value: number; readonly u: number },
): DecidingBound | null {
  if (outcome === 'not decided') return null;
  return outcome === 'within limit'
    ? { is: 'at most', mm: value + guardMmOf(u) }
    : { is: 'at least', mm: value - guardMmOf(u) };
}
