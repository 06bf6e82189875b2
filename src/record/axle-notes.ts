/**
 * What the two ends of one axle say about each other.
 *
 * Rule     same chamber size and same arm length (law), no mixing of standard and long stroke (advice), chosen or stamped on both.
 *          Arms differ where their lengths are further apart than the joint U95 and than half the step arms come in.
 *          Strokes differ where they are further apart than their joint U95: shown, no rule gives a limit to it.
 *          A steering axle with a stroke over the limit or a mismatch: also judged by itself.
 * Source   the rule set's rules; arms come in steps of 1/2 in: common practice, no source.
 */
import type { Chamber } from '../finding/chamber.ts';
import type { RuleId } from '../finding/rule-text.ts';
import type { WithU } from '../measurement/measured.ts';
import { minus } from '../measurement/minus.ts';
import type { AxleKind } from './vehicle.ts';

type ByRule = {
  /** The rule of the rule set that says so. */
  readonly rule: RuleId;
};

export type AxleNote =
  /** Sizes of one family, or chambers of two families whose sizes do not compare by name. */
  | ({
      readonly code: 'axle/chamber-size-differs' | 'axle/chamber-kind-differs';
      readonly left: Chamber;
      readonly right: Chamber;
    } & ByRule)
  | ({ readonly code: 'axle/stroke-class-differs' } & ByRule)
  | ({
      readonly code: 'axle/rated-stroke-differs';
      readonly leftMm: number;
      readonly rightMm: number;
    } & ByRule)
  | ({
      readonly code: 'axle/arm-length-differs';
      readonly leftMm: number;
      readonly rightMm: number;
      readonly U95Mm: number;
    } & ByRule)
  /** Left minus right. */
  | { readonly code: 'axle/stroke-differs'; readonly differenceMm: number; readonly U95Mm: number }
  | ({ readonly code: 'axle/steer-judged-alone'; readonly because: 'over-limit' | 'mismatch' } & ByRule);

/** One end of the axle; null is what is not known. */
export type AxleEnd = {
  readonly chamber: Chamber | null;
  readonly armLengthMm: WithU | null;
  readonly strokeMm: WithU | null;
  readonly isOver: boolean;
};

const HALF_ARM_STEP_MM = 12.7 / 2;
const SAME_RATED_MM = 0.5;

export function axleNotes(kind: AxleKind | null, left: AxleEnd | null, right: AxleEnd | null): AxleNote[] {
  const pair = left && right ? ([left, right] as const) : null;
  const mismatches = pair ? [...chamberNotes(...pair), ...armNotes(...pair)] : [];
  const notes = [...mismatches, ...(pair ? strokeNotes(...pair) : [])];
  const rule = 'steer-axle-alone';
  const byLaw = mismatches.some((note) => 'rule' in note && note.rule !== 'same-stroke-class');
  if (kind === 'steer' && (left?.isOver || right?.isOver))
    notes.push({ code: 'axle/steer-judged-alone', because: 'over-limit', rule });
  if (kind === 'steer' && byLaw) notes.push({ code: 'axle/steer-judged-alone', because: 'mismatch', rule });
  return notes;
}

function chamberNotes({ chamber: left }: AxleEnd, { chamber: right }: AxleEnd): AxleNote[] {
  if (!left || !right) return [];
  const size = { left, right, rule: 'same-chamber-size' } as const;
  if (left.family !== right.family) return [{ code: 'axle/chamber-kind-differs', ...size }];
  if (left.type.trim() !== right.type.trim()) return [{ code: 'axle/chamber-size-differs', ...size }];
  const rule = 'same-stroke-class';
  if (left.strokeClass !== right.strokeClass) return [{ code: 'axle/stroke-class-differs', rule }];
  const [leftMm, rightMm] = [left.ratedStrokeMm, right.ratedStrokeMm];
  if (leftMm === null || rightMm === null || Math.abs(leftMm - rightMm) <= SAME_RATED_MM) return [];
  return [{ code: 'axle/rated-stroke-differs', leftMm, rightMm, rule }];
}

function armNotes({ armLengthMm: left }: AxleEnd, { armLengthMm: right }: AxleEnd): AxleNote[] {
  if (!left || !right) return [];
  const { value, U95 } = minus(left, right);
  if (Math.abs(value) <= Math.max(U95, HALF_ARM_STEP_MM)) return [];
  const lengths = { leftMm: left.value, rightMm: right.value, U95Mm: U95 };
  return [{ code: 'axle/arm-length-differs', ...lengths, rule: 'same-arm-length' }];
}

function strokeNotes({ strokeMm: left }: AxleEnd, { strokeMm: right }: AxleEnd): AxleNote[] {
  if (!left || !right) return [];
  const { value, U95 } = minus(left, right);
  return Math.abs(value) > U95 ? [{ code: 'axle/stroke-differs', differenceMm: value, U95Mm: U95 }] : [];
}
