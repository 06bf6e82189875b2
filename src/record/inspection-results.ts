/**
 * What a whole inspection comes to, from what was entered: for the plan view, the report and the command line alike.
 * Plain data, the same for the same record and assessments: it may be kept beside the record and thrown away at will.
 */
import { byName } from '../basics/by-name.ts';
import { findRuleSet } from '../finding/rule-sets.ts';
import { type AxleResults, axleResults, notesByAxle } from './axle-results.ts';
import { type ConditionNote, conditionNotes } from './condition-notes.ts';
import {
  type AssessMeasurement,
  type PurposeResults,
  WHEEL_END_STATES,
  type WheelEndState,
} from './purpose-results.ts';
import type { InspectionRecord } from './record.ts';
import { limitOf } from './results.ts';
import { type RoadsideShare, roadsideShare } from './roadside-share.ts';
import { holdingResults, judgedWheelEnd, type WheelEndResults } from './wheel-end-results.ts';
import { wheelEndSearch } from './wheel-end-search.ts';

export type InspectionResults = {
  /** To be said beside every finding. */
  readonly conditions: readonly ConditionNote[];
  /** In the order of the record. */
  readonly wheelEnds: readonly WheelEndResults[];
  /** From the front; an end that is not in the record is null. */
  readonly axles: readonly AxleResults[];
  /** Places of the plan by state; a place without a wheel end in the record is not started. */
  readonly counts: Readonly<Record<WheelEndState, number>>;
  /** Null where the rule set is not known. */
  readonly roadside: { readonly asFound: RoadsideShare; readonly afterRepair: RoadsideShare } | null;
};

/** Measurements are assessed by the caller, who may keep what came of them; null: under way. */
export function inspectionResults(record: InspectionRecord, assess: AssessMeasurement): InspectionResults {
  const found = findRuleSet(record.ruleSetId);
  const ruleSet = found.ok ? found.value : null;
  const conditions = conditionNotes(record.conditions, ruleSet);
  const judged = record.wheelEnds.map((wheelEnd) => {
    const limit = found.ok ? limitOf(wheelEnd, found.value) : found;
    return { wheelEnd, end: judgedWheelEnd(wheelEnd, { ruleSet, limit }, assess) };
  });
  const notes = notesByAxle(
    record,
    judged.map(({ end }) => end),
  );
  const wheelEnds = judged.map(({ wheelEnd, end }): WheelEndResults => {
    const axle = notes[end.position.axle - 1] ?? [];
    return { ...end, search: wheelEndSearch(wheelEnd, end, { axle, conditions, ruleSet }) };
  });
  const axles = axleResults(record, wheelEnds, notes);
  return {
    conditions,
    wheelEnds,
    axles,
    counts: countsOf(axles),
    roadside: ruleSet && {
      asFound: roadsideShare(
        brakesOf(axles, (end) => end.asFound),
        ruleSet,
      ),
      afterRepair: roadsideShare(brakesOf(axles, holdingResults), ruleSet),
    },
  };
}

function countsOf(axles: readonly AxleResults[]): Record<WheelEndState, number> {
  const states = axles.flatMap(({ left, right }) => [left, right].map((end) => end?.state ?? 'not-started'));
  return byName(WHEEL_END_STATES, (state) => states.filter((one) => one === state).length);
}

function brakesOf(axles: readonly AxleResults[], of: (end: WheelEndResults) => PurposeResults) {
  return axles.flatMap(({ axle, left, right }) => [
    { position: { axle, side: 'left' } as const, results: left && of(left) },
    { position: { axle, side: 'right' } as const, results: right && of(right) },
  ]);
}
