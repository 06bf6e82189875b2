/** The first page: the vehicle, every wheel end in a line, conditions, what the rules count. */

import type { Part, Section } from '../../evidence/report-model.ts';
import { findRuleSet } from '../../finding/rule-sets.ts';
import { ASKED_CONDITIONS } from '../../record/condition-notes.ts';
import type { RoadsideShare } from '../../record/roadside-share.ts';
import type { WheelEndResults } from '../../record/wheel-end-results.ts';
import { CONDITION_NAMES, conditionNoteText, procedureText, psiText } from '../words/conditions.ts';
import { limitText } from '../words/findings.ts';
import { chamberText } from '../words/given.ts';
import { ANSWER_NAMES, CONDITIONS, INSPECTION, positionName } from '../words/inspection.ts';
import { axleNoteText, ROADSIDE, roadsideShareText, unknownBrakesText } from '../words/inspection-rules.ts';
import { differenceText, REPORT, STATE_TEXTS, SUMMARY } from '../words/report.ts';
import { PURPOSE_NAMES } from '../words/wheel-end.ts';
import type { ReportInput } from './compose-report.ts';
import { endStateOf } from './end-state.ts';
import { PLAN_KEY } from './report-pictures.ts';
import { said, section } from './section.ts';
import { strokeText } from './stroke-text.ts';

export function summarySections(input: ReportInput): Section[] {
  const { results } = input;
  return [
    ...section(INSPECTION.plan, [
      { kind: 'drawing', key: PLAN_KEY },
      { kind: 'lines', lines: [SUMMARY.key] },
    ]),
    ...section(SUMMARY.ends, [endsTable(input)], 'wide'),
    ...section(SUMMARY.roadside, [{ kind: 'lines', lines: roadsideLines(input) }]),
    ...section(INSPECTION.axles, [{ kind: 'lines', lines: axleLines(input) }]),
    ...section(CONDITIONS.heading, [
      { kind: 'facts', facts: conditionFacts(input) },
      {
        kind: 'lines',
        look: results.conditions.length > 0,
        lines:
          results.conditions.length > 0
            ? results.conditions.map((note) => conditionNoteText(note))
            : [SUMMARY.allMet],
      },
    ]),
  ];
}

function endsTable({ record, results, unit }: ReportInput): Part {
  const rows = results.wheelEnds.map((end, i) => {
    const chamber = record.wheelEnds[i]?.chamber ?? null;
    const again = isMeasuredAgain(end)
      ? [strokeText(end.afterRepair, unit), STATE_TEXTS[end.afterRepair.state]]
      : [end.repaired ? SUMMARY.noStroke : '', ''];
    return [
      positionName(end.position),
      chamber ? chamberText(chamber) : REPORT.notSaid,
      end.limit ? limitText(end.limit.values, unit) : REPORT.notSaid,
      strokeText(end.asFound, unit),
      STATE_TEXTS[end.asFound.state],
      ...again,
    ];
  });
  const states = results.wheelEnds.map(({ state }) => endStateOf(state));
  return { kind: 'table', table: { columns: SUMMARY.endColumns, rows, states } };
}

export function isMeasuredAgain({ afterRepair }: WheelEndResults): boolean {
  return afterRepair.state !== 'not-started';
}

/** How defective brakes count, and that this is not the last word on it. */
function roadsideLines({ results }: ReportInput): string[] {
  const { roadside, wheelEnds } = results;
  if (!roadside) return [];
  const counted = (name: string, share: RoadsideShare) =>
    `${name}: ${roadsideShareText(share)} ${unknownBrakesText(share)}`.trim();
  return [
    counted(PURPOSE_NAMES['as-found'], roadside.asFound),
    ...(wheelEnds.some(isMeasuredAgain)
      ? [counted(PURPOSE_NAMES['after-repair'], roadside.afterRepair)]
      : []),
    ROADSIDE.onlyThis,
  ];
}

function axleLines({ results, unit }: ReportInput): string[] {
  return results.axles.flatMap(({ axle, leftMinusRightMm, notes }) => {
    const isNoted = notes.some(({ code }) => code === 'axle/stroke-differs');
    return [
      ...(leftMinusRightMm && !isNoted
        ? [SUMMARY.between(axle, differenceText(leftMinusRightMm, unit))]
        : []),
      ...notes.map((note) => SUMMARY.axleNote(axle, axleNoteText(note, unit))),
    ];
  });
}

function conditionFacts({ record }: ReportInput) {
  const { conditions, ruleSetId } = record;
  const ruleSet = findRuleSet(ruleSetId);
  const ranges = ruleSet.ok ? ruleSet.value.pressure.ranges : [];
  const range = ranges.find(({ procedure }) => procedure === conditions.procedure);
  const kpa = (pressureKpa: number | null) => (pressureKpa === null ? null : psiText(pressureKpa));
  return [
    ...ASKED_CONDITIONS.map((condition) => {
      const answer = conditions[condition];
      return said(CONDITION_NAMES[condition], answer && ANSWER_NAMES[answer]);
    }),
    said(CONDITIONS.procedure, range ? procedureText(range) : null),
    said(CONDITIONS.pressureBefore, kpa(conditions.pressureBeforeKpa)),
    said(CONDITIONS.pressureHeld, kpa(conditions.pressureHeldKpa)),
  ];
}
