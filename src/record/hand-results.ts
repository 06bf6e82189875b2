/**
 * A stroke by tape measure with its uncertainty and its finding.
 *
 * Model    stroke = applied reading - released reading, or the difference as it was noted (read once, as from a mark to the face);
 *          u^2 = n q^2 / 12 + a^2 / 3
 *          q    graduation of the tape, read to the nearest: rectangular, +-q/2 for each of n readings
 *          a    1 mm: edge of the mark and line of sight, rectangular, once for a stroke
 * Assumes  a narrow mark, the eye square to the tape, the tape along the rod, and its fixed point on the same chamber. A tape held
 *          askew (5 degrees: 0.4 %), 15 mm off the rod and seen 10 degrees askew (2.6 mm), or a pedal that was not held are not in u.
 * Fails    where the applied reading is below the released one: one of the two was misread.
 * Source   q/sqrt(12): JCGM 100:2008, 4.3.7 (clause from memory). a: common practice, no source.
 */
import { assert, fail, ok, type Result } from '../basics/result.ts';
import { decideByHand, type Finding, undecided } from '../finding/decision.ts';
import type { Limit, LimitFailure } from '../finding/limit.ts';
import type { RuleSet, RuleSetFailure } from '../finding/rule-set.ts';
import type { WithU } from '../measurement/measured.ts';
import { K95 } from '../measurement/measured-from.ts';
import type { HandReading } from './wheel-end.ts';

/** Half width of what the mark's edge and the line of sight leave open. */
const AIM_HALF_WIDTH_MM = 1;

/** The rule set where it is known, and the limit it gives to the chamber, or why it gives none. */
export type Rules = {
  readonly ruleSet: RuleSet | null;
  readonly limit: Result<Limit, LimitFailure | RuleSetFailure>;
};

export type HandLength = WithU & {
  /** Parts of u: their squares sum to u squared. */
  readonly uGraduationMm: number;
  readonly uAimMm: number;
};

export type HandFailure = {
  readonly code: 'hand-reading/applied-below-released';
  readonly releasedMm: number;
  readonly appliedMm: number;
};

/** One hand reading; the finding is by hand, and null for a free stroke, which has no limit. */
export type HandResult = {
  readonly id: string;
  readonly quantity: HandReading['quantity'];
  readonly length: Result<HandLength, HandFailure>;
  readonly finding: Finding | null;
};

/** Standard uncertainty of one reading to the nearest graduation. */
export function uOfReadingMm(graduationMm: number): number {
  return graduationMm / Math.sqrt(12);
}

export function handLength(reading: HandReading): Result<HandLength, HandFailure> {
  const { releasedMm, appliedMm, graduationMm } = reading;
  const value = appliedMm - (releasedMm ?? 0);
  if (releasedMm !== null && value < 0)
    return fail({ code: 'hand-reading/applied-below-released', releasedMm, appliedMm });
  const uGraduationMm = uOfReadingMm(graduationMm) * Math.sqrt(releasedMm === null ? 1 : 2);
  const uAimMm = AIM_HALF_WIDTH_MM / Math.sqrt(3);
  const u = Math.hypot(uGraduationMm, uAimMm);
  return ok({ value, u, U95: K95 * u, uGraduationMm, uAimMm });
}

export function handResult(reading: HandReading, rules: Rules): HandResult {
  const { id, quantity } = reading;
  const length = handLength(reading);
  const judged = quantity === 'stroke' && length.ok;
  return { id, quantity, length, finding: judged ? handFinding(length.value, rules) : null };
}

function handFinding(stroke: HandLength, { ruleSet, limit }: Rules): Finding {
  if (!limit.ok) return undecided({ code: 'finding/limit-unknown', failure: limit.failure }, null);
  assert(ruleSet, 'a limit comes from a rule set');
  return decideByHand(stroke, limit.value, ruleSet);
}
