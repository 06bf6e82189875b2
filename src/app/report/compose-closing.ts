/** The last pages: how to read it, what is not proven, cautions, review, and what the record is. */
import type { Capture } from '../../captures/capture.ts';
import type { Part, Section } from '../../evidence/report-model.ts';
import { findRuleSet } from '../../finding/rule-sets.ts';
import { RULE_IDS, type RuleId } from '../../finding/rule-text.ts';
import { timeNotes } from '../../record/time-notes.ts';
import { CAUTIONS } from '../words/cautions.ts';
import { CONDITIONS } from '../words/inspection.ts';
import { ruleText } from '../words/inspection-rules.ts';
import { CLOSING, HISTORY_ACT_NAMES, timeText } from '../words/report.ts';
import { TIME_NOTES_HEADING, timeNoteText } from '../words/time-notes.ts';
import type { ReportInput } from './compose-report.ts';
import { pictureRef } from './picture-ref.ts';
import { GAUGE_KEY } from './report-pictures.ts';
import { section } from './section.ts';

/** The whole history is in the record; paper gets its end. */
const HISTORY_LINES = 40;

export function closingSections(input: ReportInput): Section[] {
  const { record, engine, madeAt, signedBy } = input;
  return [
    ...section(CLOSING.how, [{ kind: 'lines', lines: CLOSING.reading }]),
    ...section(CLOSING.rules, [{ kind: 'lines', lines: ruleLines(input) }]),
    ...section(CLOSING.limits, [{ kind: 'lines', lines: CLOSING.notProven }]),
    ...section(CLOSING.cautions, [{ kind: 'lines', lines: CAUTIONS }]),
    ...section(CLOSING.review, [review(input), { kind: 'signatures', names: CLOSING.signatures }]),
    ...section(CLOSING.identity, [
      {
        kind: 'facts',
        facts: [
          { label: CLOSING.recordId, value: record.id },
          { label: CLOSING.format, value: CLOSING.formatVersion(record.version) },
          { label: CLOSING.engine, value: CLOSING.engineVersion(engine) },
          { label: CLOSING.made, value: CLOSING.byDeviceClock(timeText(madeAt)) },
          ...(signedBy === null ? [] : [{ label: CLOSING.signedBy, value: signedBy }]),
        ],
      },
    ]),
    ...section(CONDITIONS.gauge, [{ kind: 'pictures', size: 'small', pictures: gauge(input) }]),
    ...section(CLOSING.captures, [captures(input), ...times(input)], 'wide'),
    ...section(CLOSING.history, history(input)),
  ];
}

/** The rules that a note of this report rests on, each once, in the rule set's order. */
function ruleLines({ record, results }: ReportInput): string[] {
  const ruleSet = findRuleSet(record.ruleSetId);
  if (!ruleSet.ok) return [];
  const notes = [...results.axles, ...results.wheelEnds].flatMap((each): readonly object[] => each.notes);
  const used = new Set(notes.map((note) => ('rule' in note ? note.rule : null)));
  if (results.roadside) used.add('roadside-share' satisfies RuleId);
  return RULE_IDS.filter((rule) => used.has(rule)).map((rule) => ruleText(rule, ruleSet.value));
}

function review({ record }: ReportInput): Part {
  if (!record.review) return { kind: 'lines', lines: [CLOSING.notReviewed] };
  const { by, at, note } = record.review;
  return { kind: 'lines', lines: [CLOSING.reviewed(by, timeText(at)), note].filter((line) => line.trim()) };
}

function gauge({ record }: ReportInput) {
  const { gaugeCaptureId: captureId } = record.conditions;
  return captureId === null ? [] : [pictureRef(record, GAUGE_KEY, { captureId, frame: null, name: '' })];
}

function captures({ record }: ReportInput): Part {
  const rows = record.captures.map(({ fileName, widthPx, heightPx, clip, sha256, ...times }) => [
    fileName,
    clip ? CLOSING.clip(widthPx, heightPx, clip) : CLOSING.photo(widthPx, heightPx),
    timesText(times, clip?.headerTime ?? null),
    sha256,
  ]);
  return { kind: 'table', table: { columns: CLOSING.captureColumns, rows, breaks: true } };
}

function timesText(
  { takenAt, fileWrittenAt, addedAt }: Pick<Capture, 'takenAt' | 'fileWrittenAt' | 'addedAt'>,
  headerTime: string | null,
): string {
  return [
    takenAt ?? (headerTime ? timeText(headerTime) : CLOSING.noTime),
    ...(fileWrittenAt ? [CLOSING.fileWritten(timeText(fileWrittenAt))] : []),
    ...(addedAt ? [CLOSING.takenIn(timeText(addedAt))] : []),
  ].join('; ');
}

function times({ record }: ReportInput): Part[] {
  const notes = timeNotes(record).map(timeNoteText);
  return notes.length === 0 ? [] : [{ kind: 'lines', look: true, lines: [TIME_NOTES_HEADING, ...notes] }];
}

function history({ record }: ReportInput): Part[] {
  const shown = record.history.slice(-HISTORY_LINES);
  const before = record.history.length - shown.length;
  return [
    { kind: 'lines', lines: before > 0 ? [CLOSING.historyLeft(before)] : [] },
    {
      kind: 'table',
      table: {
        breaks: true,
        columns: CLOSING.historyColumns,
        rows: shown.map(({ at, by, act, place, chainSha256 }) => [
          timeText(at),
          by,
          HISTORY_ACT_NAMES[act],
          place,
          chainSha256 ? `${chainSha256.slice(0, 12)}…` : '',
        ]),
      },
    },
  ];
}
