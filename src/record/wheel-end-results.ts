/**
 * What one wheel end came to: as found, after repair, and which of the two holds.
 *
 * Rule     after a repair the state found after it holds, once there is a stroke to judge; until then what was found holds.
 */
import type { Limit } from '../finding/limit.ts';
import { isAnythingEntered } from './anything-entered.ts';
import type { Rules } from './hand-results.ts';
import type { Purpose } from './measurement-input.ts';
import {
  type AssessMeasurement,
  type Basis,
  type Difference,
  differenceOf,
  type PurposeResults,
  purposeResults,
  type WheelEndState,
} from './purpose-results.ts';
import type { Position, WheelEnd } from './wheel-end.ts';
import { type WheelEndNote, wheelEndNotes } from './wheel-end-notes.ts';
import type { WheelEndSearch } from './wheel-end-search.ts';

/** Judged by itself, before the other end of its axle is looked at. */
export type JudgedWheelEnd = {
  readonly id: string;
  readonly position: Position;
  /** For the plan view. */
  readonly state: WheelEndState;
  readonly basis: Basis | null;
  /** Which of the two the state is taken from. */
  readonly holds: Purpose;
  readonly repaired: boolean;
  /** Null where the chamber or the rule set gives none. */
  readonly limit: Limit | null;
  readonly asFound: PurposeResults;
  readonly afterRepair: PurposeResults;
  /** Stroke after repair minus stroke as found. */
  readonly changeMm: Difference | null;
  readonly notes: readonly WheelEndNote[];
};

export type WheelEndResults = JudgedWheelEnd & {
  /** What to check next and what points where; null where nothing is wrong. */
  readonly search: WheelEndSearch | null;
};

export function judgedWheelEnd(
  wheelEnd: WheelEnd,
  { ruleSet, limit }: Rules,
  assess: AssessMeasurement,
): JudgedWheelEnd {
  const asFound = purposeResults(wheelEnd, 'as-found', { ruleSet, limit }, assess);
  const afterRepair = purposeResults(wheelEnd, 'after-repair', { ruleSet, limit }, assess);
  const holding = hasStrokeState(afterRepair) ? afterRepair : asFound;
  const isBare = holding.state === 'not-started' && isAnythingEntered(wheelEnd);
  return {
    id: wheelEnd.id,
    position: wheelEnd.position,
    state: isBare ? 'begun' : holding.state,
    basis: holding.basis,
    holds: holding.purpose,
    repaired: wheelEnd.repairs.length > 0 || afterRepair.state !== 'not-started',
    limit: limit.ok ? limit.value : null,
    asFound,
    afterRepair,
    changeMm:
      asFound.strokeMm && afterRepair.strokeMm && differenceOf(afterRepair.strokeMm, asFound.strokeMm),
    notes: wheelEndNotes(wheelEnd, asFound, afterRepair, ruleSet),
  };
}

/** What holds now: after repair where there is a stroke to judge, else as found. */
export function holdingResults({ holds, asFound, afterRepair }: JudgedWheelEnd): PurposeResults {
  return holds === 'after-repair' ? afterRepair : asFound;
}

/** There is a stroke to judge. */
export function hasStrokeState({ state }: PurposeResults): boolean {
  return state !== 'not-started' && state !== 'begun';
}
