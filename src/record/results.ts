/** What a record's measurement comes to: computed from what was entered, every time anew, the same in the page and at the command line. */
import type { Result } from '../basics/result.ts';
import { decide, type Finding, undecided } from '../finding/decision.ts';
import { type Limit, type LimitFailure, limitFor } from '../finding/limit.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import { findRuleSet } from '../finding/rule-sets.ts';
import type { View } from '../marks/view.ts';
import { measure } from '../measurement/measure.ts';
import type { MeasureInput, Measurement, MeasurementFailure } from '../measurement/measurement.ts';
import { isLongAgainstLooks } from './chamber-signs.ts';
import type { MeasurementInput } from './measurement-input.ts';
import type { InspectionRecord } from './record.ts';
import type { WheelEnd } from './wheel-end.ts';

export type Assessment = {
  readonly measurement: Result<Measurement, MeasurementFailure>;
  readonly finding: Finding;
};

export function assess(
  record: InspectionRecord,
  wheelEnd: WheelEnd,
  measurement: MeasurementInput,
): Assessment {
  const measured = measure(measureInput(record, measurement));
  return { measurement: measured, finding: findingFor(record, wheelEnd, measurement, measured) };
}

/** One and the same list, so that the same record gives the same input. */
const NONE: readonly View[] = [];

/** What the engine needs of the record: for measuring elsewhere, as in a worker, and deciding here. */
export function measureInput(record: InspectionRecord, measurement: MeasurementInput): MeasureInput {
  const { views, references, cameraStill, cameraProfileId, followed } = measurement;
  const cameraProfile = record.cameraProfiles.find(({ id }) => id === cameraProfileId) ?? null;
  const sideViews = followed?.sideViews ?? NONE;
  return { views, sideViews, references, cameraStill, captures: record.captures, cameraProfile };
}

/** The limit of a wheel end's chamber, its looks included. */
export function limitOf(
  { chamber, identification }: WheelEnd,
  ruleSet: RuleSet,
): Result<Limit, LimitFailure> {
  return limitFor(chamber, ruleSet, isLongAgainstLooks(chamber, identification));
}

export function findingFor(
  record: InspectionRecord,
  wheelEnd: WheelEnd,
  measurement: MeasurementInput,
  measured: Result<Measurement, MeasurementFailure>,
): Finding {
  const ruleSet = findRuleSet(record.ruleSetId);
  const limit = ruleSet.ok ? limitOf(wheelEnd, ruleSet.value) : ruleSet;
  if (!measured.ok)
    return undecided(
      { code: 'finding/not-measured', failure: measured.failure },
      limit.ok ? limit.value : null,
    );
  if (!ruleSet.ok) return undecided({ code: 'finding/limit-unknown', failure: ruleSet.failure }, null);
  if (!limit.ok) return undecided({ code: 'finding/limit-unknown', failure: limit.failure }, null);
  const { released, applied } = measurement.overStrokeMark;
  return decide({
    measurement: measured.value,
    limit: limit.value,
    ruleSet: ruleSet.value,
    sights: { released: released?.sight ?? null, applied: applied?.sight ?? null },
  });
}
