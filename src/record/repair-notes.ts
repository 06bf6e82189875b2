/**
 * What is to be said about the repairs of a wheel end.
 *
 * Rule     an automatic adjuster that was turned by hand, with neither a cause nor a part named, is no repair.
 *          The free stroke that a brake was set to lies in the usual range.
 * Source   the rule set's rules 'automatic-adjuster-by-hand' and 'free-stroke'.
 */
import { freeStrokeBounds, setFreeStrokeRange } from '../finding/free-stroke.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import type { RuleId } from '../finding/rule-text.ts';
import type { Repair } from './repair.ts';
import type { WheelEnd } from './wheel-end.ts';

export type RepairNote = { readonly repairId: string; readonly rule: RuleId } & (
  | { readonly code: 'repair/adjusting-is-no-repair' }
  /** The same, where it is not known whether the adjuster is an automatic one. */
  | { readonly code: 'repair/adjusting-may-be-no-repair' }
  | {
      readonly code: 'repair/free-stroke-set-short' | 'repair/free-stroke-set-long';
      readonly setMm: number;
      readonly leastMm: number;
      readonly mostMm: number;
      readonly mostElsewhereMm: number;
    }
  /** Between the most of one maker and that of another. */
  | {
      readonly code: 'repair/free-stroke-makers-differ';
      readonly setMm: number;
      readonly leastMm: number;
      readonly mostMm: number;
      readonly mostElsewhereMm: number;
    }
);

export function repairNotes(wheelEnd: WheelEnd, ruleSet: RuleSet | null): RepairNote[] {
  return wheelEnd.repairs.flatMap((repair) => [
    ...byHand(wheelEnd, repair),
    ...(ruleSet ? freeStrokeSet(repair, ruleSet) : []),
  ]);
}

function byHand({ adjuster }: WheelEnd, repair: Repair): RepairNote[] {
  const { adjustedByHand, cause, parts, newAdjuster, id: repairId } = repair;
  const named = (cause !== null && cause !== 'not-found') || parts.some((part) => part.trim() !== '');
  if (!adjustedByHand || named) return [];
  const kind = newAdjuster ?? adjuster;
  if (kind === 'manual') return [];
  const code = kind === 'automatic' ? 'repair/adjusting-is-no-repair' : 'repair/adjusting-may-be-no-repair';
  return [{ code, repairId, rule: 'automatic-adjuster-by-hand' }];
}

function freeStrokeSet({ id: repairId, setFreeStrokeMm: setMm }: Repair, ruleSet: RuleSet): RepairNote[] {
  if (setMm === null) return [];
  const numbers = { repairId, rule: 'free-stroke', setMm, ...freeStrokeBounds(ruleSet) } as const;
  switch (setFreeStrokeRange(setMm, ruleSet)) {
    case 'short':
      return [{ code: 'repair/free-stroke-set-short', ...numbers }];
    case 'long':
      return [{ code: 'repair/free-stroke-set-long', ...numbers }];
    case 'not decided':
      return [{ code: 'repair/free-stroke-makers-differ', ...numbers }];
    case 'in range':
      return [];
  }
}
