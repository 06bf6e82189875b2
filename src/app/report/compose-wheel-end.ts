/** One wheel end, what counts first: finding, pictures, numbers with what they rest on, then what was found and done. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { Fact, Section, WheelEndSheet } from '../../evidence/report-model.ts';
import { findRuleSet } from '../../finding/rule-sets.ts';
import type { WheelEndResults } from '../../record/wheel-end-results.ts';
import { CONDITIONS_OPEN, conditionNoteText } from '../words/conditions.ts';
import { measurementWarningText } from '../words/failures-measurement.ts';
import { findingNoteText, limitSourceText, limitText, undecidedText } from '../words/findings.ts';
import { chamberText } from '../words/given.ts';
import { positionName } from '../words/inspection.ts';
import { wheelEndNoteText } from '../words/inspection-rules.ts';
import { limitNoteText } from '../words/limits.ts';
import { CLOSING, END, REPORT, STATE_TEXTS } from '../words/report.ts';
import { brakeSections } from './compose-brake.ts';
import { causeSections } from './compose-cause.ts';
import { measurementSections } from './compose-measurement.ts';
import { readingSections } from './compose-readings.ts';
import type { ReportInput } from './compose-report.ts';
import { isMeasuredAgain } from './compose-summary.ts';
import { endStateOf } from './end-state.ts';
import { barKey, PURPOSES_SHOWN } from './report-pictures.ts';
import { section } from './section.ts';
import { strokeText } from './stroke-text.ts';

export function wheelEndSheet(input: ReportInput, index: number): WheelEndSheet {
  const end = input.results.wheelEnds[index];
  const wheelEnd = input.record.wheelEnds[index];
  if (!end || !wheelEnd) throw new Error('results are of the same record');
  return {
    name: positionName(end.position),
    state: endStateOf(end.state),
    finding: isMeasuredAgain(end)
      ? END.both(STATE_TEXTS[end.asFound.state], STATE_TEXTS[end.afterRepair.state].toLowerCase())
      : STATE_TEXTS[end.state],
    glance: glance(input, end),
    brief: wheelEnd.measurements.every(({ views }) => views.length === 0) && wheelEnd.photos.length === 0,
    sections: [
      ...section(END.stroke, [
        ...(hasStroke(end) ? [{ kind: 'drawing', key: barKey(index) } as const] : []),
        { kind: 'lines', lines: notesOf(input, end) },
      ]),
      ...PURPOSES_SHOWN.flatMap((purpose) => measurementSections(input, index, purpose)),
      ...readingSections(input, index),
      ...limitSection(input, end),
      ...brakeSections(input, index),
      ...causeSections(input, index),
    ],
  };
}

function hasStroke({ asFound, afterRepair }: WheelEndResults): boolean {
  return asFound.strokeMm !== null || afterRepair.strokeMm !== null;
}

function glance({ record, unit }: ReportInput, end: WheelEndResults): Fact[] {
  const chamber = record.wheelEnds.find(({ id }) => id === end.id)?.chamber ?? null;
  return [
    { label: END.asFound, value: strokeText(end.asFound, unit) },
    { label: END.limit, value: end.limit ? limitText(end.limit.values, unit) : REPORT.notSaid },
    {
      label: END.afterRepair,
      value: afterText(end, unit),
    },
    { label: END.chamber, value: chamber ? chamberText(chamber) : REPORT.notSaid },
  ];
}

function afterText(end: WheelEndResults, unit: LengthUnit): string {
  if (isMeasuredAgain(end)) return strokeText(end.afterRepair, unit);
  return end.repaired ? END.notMeasured : END.noRepair;
}

/** Why it is not decided, what stands beside the finding, and the conditions that were not kept: beside every finding. */
function notesOf({ results, unit }: ReportInput, end: WheelEndResults): string[] {
  const ofPurposes = [end.asFound, end.afterRepair].flatMap(({ finding, measurement }) => [
    ...(finding?.reasons ?? []).map((reason) => undecidedText(reason, unit)),
    ...(finding?.notes ?? []).map((note) => findingNoteText(note, unit)),
    ...(measurement?.assessment?.measurement.ok
      ? measurement.assessment.measurement.value.warnings.map((warning) =>
          measurementWarningText(warning, unit),
        )
      : []),
  ]);
  return [
    ...new Set([
      ...ofPurposes,
      ...end.notes.map((note) => wheelEndNoteText(note, unit)),
      ...conditionLines(results, end),
    ]),
  ];
}

/** What is missing or not as asked is said beside every stroke. */
function conditionLines({ conditions }: ReportInput['results'], { basis }: WheelEndResults): string[] {
  return basis === null || conditions.length === 0
    ? []
    : [[CONDITIONS_OPEN, ...conditions.map(conditionNoteText)].join(' ')];
}

function limitSection({ record, unit }: ReportInput, { limit }: WheelEndResults): Section[] {
  const ruleSet = findRuleSet(record.ruleSetId);
  if (!limit || !ruleSet.ok) return [];
  const lines = [
    ...limit.values.flatMap((value) =>
      value.sources.map((source) => limitSourceText({ ...value, sources: [source] }, ruleSet.value, unit)),
    ),
    ...limit.notes.map((note) => limitNoteText(note, unit)),
    CLOSING.reading[2],
  ];
  return section(END.limit, [{ kind: 'lines', lines }]);
}
