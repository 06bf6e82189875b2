/**
 * The adjustment limit of a chamber by a rule set.
 *
 * Rule     a listed chamber takes its row's limit; what is not proven takes the lower one. A rated stroke is not a limit.
 *          Where texts or marks leave two limits possible, both are kept and the decision must hold against both.
 *          An unlisted chamber takes the rule set's share of its rated stroke, or the maker's limit, the smaller.
 * Source   the rule set names it for every value.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { inchesFromMm, mmFromInches } from '../basics/units.ts';
import type { Chamber, ChamberFamily, StrokeClass } from './chamber.ts';
import type { RuleSet, RuleSetRow } from './rule-set.ts';

export type LimitValue = {
  readonly limitMm: number;
  /** Exact for a limit of the table. */
  readonly limitIn: number;
  /** Ids of the rule set's sources that give this value. */
  readonly sources: readonly string[];
};

export type Limit = {
  /** Lowest first. More than one where it is open which of them holds. */
  readonly values: readonly [LimitValue, ...LimitValue[]];
  readonly openBecause: 'editions-differ' | 'chamber-ambiguous' | null;
  /** The row of the table; null for the rule about unlisted chambers. */
  readonly row: {
    readonly family: ChamberFamily;
    readonly type: string;
    readonly strokeClass: StrokeClass;
  } | null;
  readonly notes: readonly LimitNote[];
};

export type LimitNote =
  /** This type also comes as long stroke, with a higher limit: without a mark that proves it the standard limit holds. */
  | { readonly code: 'limit/long-stroke-not-proven'; readonly longLimitMm: number }
  /** Long stroke of this type with this rated stroke has a higher limit; no such rated stroke is known here. */
  | {
      readonly code: 'limit/rated-stroke-not-proven';
      readonly ratedStrokeMm: number;
      readonly higherLimitMm: number;
    }
  /** Some texts call this rated stroke standard, others long: look for the long-stroke mark. */
  | { readonly code: 'limit/rated-stroke-ambiguous'; readonly ratedStrokeMm: number }
  | {
      readonly code: 'limit/rated-stroke-suggests-long' | 'limit/rated-stroke-contradicts-long';
      readonly ratedStrokeMm: number;
      readonly standardRatedStrokeMm: number;
    }
  /** Long stroke was chosen, and the chamber shows no sign of it: the standard limit stays possible. */
  | { readonly code: 'limit/long-against-looks' }
  | { readonly code: 'limit/editions-differ'; readonly lowerMm: number; readonly higherMm: number }
  /** The maker marked another limit than the table gives; for a listed chamber the table holds. */
  | { readonly code: 'limit/marked-limit-differs'; readonly markedLimitMm: number }
  /** Unlisted: only one of the two conditions could be applied. */
  | { readonly code: 'limit/rated-stroke-unknown' | 'limit/marked-limit-unknown' };

export type LimitFailure =
  | { readonly code: 'limit/chamber-unknown' }
  | { readonly code: 'limit/type-not-listed'; readonly family: ChamberFamily; readonly type: string }
  | { readonly code: 'limit/no-long-stroke-listed'; readonly family: ChamberFamily; readonly type: string }
  | { readonly code: 'limit/nothing-marked' };

/** Stamps come in quarter inches or in whole millimetres (76 for 76.2): closer than this is the same stroke. */
const SAME_STROKE_MM = 0.5;

/** longAgainstLooks: long stroke was chosen, and the chamber shows no sign of it. */
export function limitFor(
  chamber: Chamber | null,
  ruleSet: RuleSet,
  longAgainstLooks = false,
): Result<Limit, LimitFailure> {
  if (chamber === null) return fail({ code: 'limit/chamber-unknown' });
  const { family, type, strokeClass } = chamber;
  if (family === 'unlisted') return unlistedLimit(chamber, ruleSet);
  const row = ruleSet.rows.find((candidate) => candidate.family === family && candidate.type === type);
  if (!row) return fail({ code: 'limit/type-not-listed', family, type });
  const values = valuesOf(row, strokeClass, chamber.ratedStrokeMm);
  if (!isNonEmpty(values)) return fail({ code: 'limit/no-long-stroke-listed', family, type });
  const [lowest, ...others] = values;
  const stands = { row: { family, type, strokeClass }, notes: notesOn(chamber, row, lowest.limitMm) };

  const higher = others[0];
  if (higher) {
    const note = {
      code: 'limit/editions-differ',
      lowerMm: lowest.limitMm,
      higherMm: higher.limitMm,
    } as const;
    return ok({ ...stands, values, openBecause: 'editions-differ', notes: [note, ...stands.notes] });
  }
  if (longAgainstLooks || isLongInDoubt(chamber, row)) {
    const both = [...valuesOf(row, 'standard', null), lowest];
    const looks = longAgainstLooks ? [{ code: 'limit/long-against-looks' } as const] : [];
    const notes = [...looks, ...stands.notes];
    if (isNonEmpty(both)) return ok({ ...stands, notes, values: both, openBecause: 'chamber-ambiguous' });
  }
  return ok({ ...stands, values, openBecause: null });
}

/** The limits that the row gives to this stroke class, lowest first; a rated stroke of its own goes before the general one. */
function valuesOf(row: RuleSetRow, strokeClass: StrokeClass, ratedStrokeMm: number | null): LimitValue[] {
  const ofClass = row.limits.filter((limit) => limit.strokeClass === strokeClass);
  const ofRated = ofClass.filter(
    (limit) => limit.ratedStrokeIn !== null && isSameStroke(ratedStrokeMm, limit.ratedStrokeIn),
  );
  const chosen = ofRated.length > 0 ? ofRated : ofClass.filter((limit) => limit.ratedStrokeIn === null);
  return chosen
    .map(({ limitIn, sources }) => ({ limitMm: mmFromInches(limitIn), limitIn, sources }))
    .sort((a, b) => a.limitMm - b.limitMm);
}

function notesOn(chamber: Chamber, row: RuleSetRow, limitMm: number): LimitNote[] {
  const { strokeClass, ratedStrokeMm, markedLimitMm } = chamber;
  const notes: LimitNote[] = [];
  const long = row.limits.filter((limit) => limit.strokeClass === 'long');
  const [longLimit] = long;
  if (strokeClass === 'standard' && longLimit)
    notes.push({ code: 'limit/long-stroke-not-proven', longLimitMm: mmFromInches(longLimit.limitIn) });
  if (strokeClass === 'long' && ratedStrokeMm === null)
    for (const { ratedStrokeIn, limitIn } of long)
      if (ratedStrokeIn !== null)
        notes.push({
          code: 'limit/rated-stroke-not-proven',
          ratedStrokeMm: mmFromInches(ratedStrokeIn),
          higherLimitMm: mmFromInches(limitIn),
        });
  if (ratedStrokeMm !== null) notes.push(...notesOnRatedStroke(chamber, row, ratedStrokeMm));
  if (markedLimitMm !== null && Math.abs(markedLimitMm - limitMm) > SAME_STROKE_MM)
    notes.push({ code: 'limit/marked-limit-differs', markedLimitMm });
  return notes;
}

function notesOnRatedStroke(chamber: Chamber, row: RuleSetRow, ratedStrokeMm: number): LimitNote[] {
  if (row.ambiguousRatedStrokeIn !== null && isSameStroke(ratedStrokeMm, row.ambiguousRatedStrokeIn))
    return [{ code: 'limit/rated-stroke-ambiguous', ratedStrokeMm }];
  if (row.standardRatedStrokeIn === null) return [];
  const standardRatedStrokeMm = mmFromInches(row.standardRatedStrokeIn);
  if (chamber.strokeClass === 'long')
    return isLongInDoubt(chamber, row)
      ? [{ code: 'limit/rated-stroke-contradicts-long', ratedStrokeMm, standardRatedStrokeMm }]
      : [];
  return ratedStrokeMm > standardRatedStrokeMm + SAME_STROKE_MM
    ? [{ code: 'limit/rated-stroke-suggests-long', ratedStrokeMm, standardRatedStrokeMm }]
    : [];
}

/** Called long, yet stamped with no more than the standard chamber's rated stroke: one of the two is misread. */
function isLongInDoubt({ strokeClass, ratedStrokeMm }: Chamber, row: RuleSetRow): boolean {
  if (strokeClass !== 'long' || ratedStrokeMm === null || row.standardRatedStrokeIn === null) return false;
  return ratedStrokeMm <= mmFromInches(row.standardRatedStrokeIn) + SAME_STROKE_MM;
}

function unlistedLimit(chamber: Chamber, ruleSet: RuleSet): Result<Limit, LimitFailure> {
  const { ratedStrokeMm, markedLimitMm } = chamber;
  const { shareOfRatedStroke, source } = ruleSet.unlisted;
  const ofRatedMm = ratedStrokeMm === null ? null : ratedStrokeMm * shareOfRatedStroke;
  if (ofRatedMm === null && markedLimitMm === null) return fail({ code: 'limit/nothing-marked' });
  const limitMm = Math.min(ofRatedMm ?? Infinity, markedLimitMm ?? Infinity);
  const notes: LimitNote[] = [];
  if (ofRatedMm === null) notes.push({ code: 'limit/rated-stroke-unknown' });
  if (markedLimitMm === null) notes.push({ code: 'limit/marked-limit-unknown' });
  return ok({
    values: [{ limitMm, limitIn: inchesFromMm(limitMm), sources: [source] }],
    openBecause: null,
    row: null,
    notes,
  });
}

function isSameStroke(strokeMm: number | null, inches: number): boolean {
  return strokeMm !== null && Math.abs(strokeMm - mmFromInches(inches)) < SAME_STROKE_MM;
}

function isNonEmpty<T>(list: readonly T[]): list is readonly [T, ...T[]] {
  return list.length > 0;
}
