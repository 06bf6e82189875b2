/** What was wrong, what was done about it, what else was noted. */
import type { Fact, Section } from '../../evidence/report-model.ts';
import type { Repair } from '../../record/repair.ts';
import { CAUSE_NAMES, CHECKS } from '../words/causes.ts';
import { ANSWER_NAMES } from '../words/inspection.ts';
import { END, REPORT, timeText } from '../words/report.ts';
import { lengthText } from '../words/values.ts';
import { ADJUSTER_NAMES } from '../words/wheel-end.ts';
import type { ReportInput } from './compose-report.ts';
import { pictureRef } from './picture-ref.ts';
import { photoKey } from './report-pictures.ts';
import { said, section } from './section.ts';

export function causeSections(input: ReportInput, index: number): Section[] {
  const wheelEnd = input.record.wheelEnds[index];
  if (!wheelEnd) return [];
  const rows = wheelEnd.causeAnswers.map(({ check, answer }) => [
    CHECKS[check].question,
    ANSWER_NAMES[answer],
  ]);
  const photos = wheelEnd.photos.map(({ captureId, caption }, photo) =>
    pictureRef(input.record, photoKey(index, photo), {
      captureId,
      frame: null,
      name: caption || END.photo(photo + 1),
    }),
  );
  return [
    ...section(END.causeChecks, [{ kind: 'table', table: { columns: END.causeColumns, rows } }]),
    ...wheelEnd.repairs.flatMap((repair) =>
      section(END.repair, [
        { kind: 'facts', facts: repairFacts(repair, input) },
        { kind: 'lines', lines: paragraphs(repair.work) },
      ]),
    ),
    ...section(END.notes, [{ kind: 'lines', lines: paragraphs(wheelEnd.notes) }]),
    ...section(END.photos, [{ kind: 'pictures', size: 'small', pictures: photos }]),
  ];
}

function repairFacts(repair: Repair, { unit }: ReportInput): Fact[] {
  const { at, by, cause, parts, newAdjuster, adjustedByHand, setFreeStrokeMm } = repair;
  return [
    { label: END.repairAt, value: timeText(at) },
    said(END.repairBy, by),
    said(END.cause, cause && CAUSE_NAMES[cause]),
    { label: END.parts, value: parts.length > 0 ? parts.join('; ') : REPORT.none },
    { label: END.newAdjuster, value: newAdjuster ? ADJUSTER_NAMES[newAdjuster] : END.asItWas },
    {
      label: END.adjustedByHand,
      value: adjustedByHand ? ANSWER_NAMES.yes : ANSWER_NAMES.no,
      look: adjustedByHand,
    },
    said(END.setFreeStroke, setFreeStrokeMm === null ? null : lengthText(setFreeStrokeMm, unit)),
  ];
}

function paragraphs(text: string): string[] {
  return text.split(/\n+/).filter((line) => line.trim() !== '');
}
