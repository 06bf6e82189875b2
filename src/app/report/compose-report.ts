/** What the report says of a record, in words: pure, the same for the same record, results and moment. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { Fact, ReportModel } from '../../evidence/report-model.ts';
import { findRuleSet } from '../../finding/rule-sets.ts';
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import type { InspectionResults } from '../../record/inspection-results.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { AID_LINE, unitText } from '../words/en.ts';
import { AXLE_KIND_NAMES, countedText, VEHICLE_KIND_NAMES } from '../words/inspection.ts';
import { FRONT, REPORT, timeText } from '../words/report.ts';
import { closingSections } from './compose-closing.ts';
import { summarySections } from './compose-summary.ts';
import { wheelEndSheet } from './compose-wheel-end.ts';
import { said } from './section.ts';

export type ReportInput = {
  readonly record: InspectionRecord;
  readonly results: InspectionResults;
  /** What followed clips came to, by the measurement's id. */
  readonly clips: ReadonlyMap<string, ClipMeasurement>;
  readonly unit: LengthUnit;
  /** Version of the program. */
  readonly engine: string;
  /** When the report is made, ISO 8601. */
  readonly madeAt: string;
  /** Fingerprint of the key that signs the package which the report goes into; null for a report on its own. */
  readonly signedBy: string | null;
};

export function reportModel(input: ReportInput): ReportModel {
  const { record } = input;
  const unit = unitText(record.vehicle.unit);
  return {
    title: REPORT.title,
    aid: AID_LINE,
    titleBlock: [...titleBlock(record), { label: FRONT.result, value: resultText(input.results.counts) }],
    summary: summarySections(input),
    wheelEnds: record.wheelEnds.map((_, end) => wheelEndSheet(input, end)),
    closing: closingSections(input),
    running: { head: REPORT.head(unit, record.id), foot: REPORT.foot, page: REPORT.page },
  };
}

/** What counts, in the order in which it presses. */
function resultText(counts: InspectionResults['counts']): string {
  const without = counts.begun + counts['not-started'];
  const told = (['over limit', 'not decided', 'within limit'] as const)
    .filter((state) => counts[state] > 0)
    .map((state) => countedText(counts[state], state));
  return [...told, ...(without > 0 ? [FRONT.without(without)] : [])].join('; ');
}

function titleBlock({ vehicle, inspector, createdAt, ruleSetId }: InspectionRecord): Fact[] {
  const { unit, kind, serialNumber, owner, axles } = vehicle;
  const ruleSet = findRuleSet(ruleSetId);
  const kinds = axles.map((axle) => (axle.kind ? AXLE_KIND_NAMES[axle.kind].toLowerCase() : REPORT.notSaid));
  return [
    { label: FRONT.unit, value: unitText(unit) },
    said(FRONT.kind, kind ? VEHICLE_KIND_NAMES[kind] : ''),
    said(FRONT.axles, axles.length > 0 ? `${axles.length}: ${kinds.join(', ')}` : ''),
    said(FRONT.serialNumber, serialNumber),
    said(FRONT.owner, owner),
    said(FRONT.inspector, inspector.name),
    { label: FRONT.inspected, value: timeText(createdAt) },
    said(FRONT.qualification, inspector.qualification),
    { label: FRONT.ruleSet, value: ruleSet.ok ? ruleSet.value.title : ruleSetId, look: !ruleSet.ok },
  ];
}
