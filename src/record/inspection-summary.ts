/**
 * An inspection in short: what a list of many, and the trend of one unit, are made of. Small and plain, so that it can be kept beside
 * the record; computed from the record and its results, and thrown away when either changes.
 */
import type { Outcome } from '../finding/guard-band.ts';
import type { InspectionResults } from './inspection-results.ts';
import type { Purpose } from './measurement-input.ts';
import type { Based, PurposeResults, WheelEndState } from './purpose-results.ts';
import type { InspectionRecord } from './record.ts';
import type { RoadsideShare } from './roadside-share.ts';
import type { Position } from './wheel-end.ts';

export type StrokeInShort = {
  readonly purpose: Purpose;
  readonly strokeMm: Based;
  readonly outcome: Outcome;
  /** Lowest limit that is possible; null where there is none. */
  readonly limitMm: number | null;
};

export type WheelEndInShort = {
  readonly position: Position;
  readonly state: WheelEndState;
  readonly repaired: boolean;
  readonly strokes: readonly StrokeInShort[];
};

export type InspectionSummary = {
  readonly recordId: string;
  readonly createdAt: string;
  readonly unit: string;
  readonly kind: InspectionRecord['vehicle']['kind'];
  readonly counts: InspectionResults['counts'];
  readonly openConditions: number;
  readonly roadsideAsFound: RoadsideShare['reached'] | null;
  readonly reviewed: boolean;
  readonly wheelEnds: readonly WheelEndInShort[];
};

export function inspectionSummary(record: InspectionRecord, results: InspectionResults): InspectionSummary {
  return {
    recordId: record.id,
    createdAt: record.createdAt,
    unit: record.vehicle.unit,
    kind: record.vehicle.kind,
    counts: results.counts,
    openConditions: results.conditions.length,
    roadsideAsFound: results.roadside?.asFound.reached ?? null,
    reviewed: record.review !== null,
    wheelEnds: results.wheelEnds.map(({ position, state, repaired, asFound, afterRepair }) => ({
      position,
      state,
      repaired,
      strokes: [asFound, afterRepair].flatMap(strokeInShort),
    })),
  };
}

function strokeInShort({ purpose, strokeMm, finding }: PurposeResults): StrokeInShort[] {
  if (!strokeMm || !finding) return [];
  const limitMm = finding.limit?.values[0].limitMm ?? null;
  return [{ purpose, strokeMm, outcome: finding.outcome, limitMm }];
}
