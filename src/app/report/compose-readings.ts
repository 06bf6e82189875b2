/** What was read by hand: the tape beside the pictures, dial and rule; and the recheck beside what was found. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { Part, Section } from '../../evidence/report-model.ts';
import type { WithU } from '../../measurement/measured.ts';
import type { PurposeResults } from '../../record/purpose-results.ts';
import { differenceOf } from '../../record/purpose-results.ts';
import type { HandReading, WheelEnd } from '../../record/wheel-end.ts';
import type { WheelEndResults } from '../../record/wheel-end-results.ts';
import { OUTCOMES } from '../words/findings.ts';
import { HAND_NOTE } from '../words/inspection-rules.ts';
import {
  dialText,
  differenceText,
  END,
  handFailureText,
  handReadingText,
  limitOfReadingText,
  purposeText,
  QUANTITIES,
  REPORT,
  readingName,
} from '../words/report.ts';
import { measuredAngleText, measuredLengthText } from '../words/values.ts';
import type { ReportInput } from './compose-report.ts';
import { section } from './section.ts';

export function readingSections({ record, results, unit }: ReportInput, index: number): Section[] {
  const wheelEnd = record.wheelEnds[index];
  const end = results.wheelEnds[index];
  if (!wheelEnd || !end) return [];
  return [
    ...section(END.handReadings, [
      handTable(wheelEnd, end, unit),
      { kind: 'lines', lines: wheelEnd.handReadings.length > 0 ? [HAND_NOTE] : [] },
    ]),
    ...section(END.recheck, [recheckTable(end, unit)]),
    ...section(END.otherReadings, [otherTable(wheelEnd, unit)]),
  ];
}

function handTable({ handReadings }: WheelEnd, end: WheelEndResults, unit: LengthUnit): Part {
  const rows = [end.asFound, end.afterRepair].flatMap((of) =>
    of.handReadings.flatMap((result) => {
      const reading = handReadings.find(({ id }) => id === result.id);
      return reading ? [handRow(reading, result, of, unit)] : [];
    }),
  );
  return { kind: 'table', table: { columns: END.handColumns, rows } };
}

function handRow(
  reading: HandReading,
  { quantity, length, finding }: PurposeResults['handReadings'][number],
  { purpose, handReadings, differenceMm }: PurposeResults,
  unit: LengthUnit,
): string[] {
  // The difference is that of the last stroke read.
  const last = handReadings.findLast((each) => each.quantity === 'stroke' && each.length.ok);
  return [
    `${QUANTITIES[quantity]} ${purposeText(purpose)}`,
    handReadingText(reading, unit),
    length.ok ? measuredLengthText(length.value, unit) : handFailureText(length.failure, unit),
    finding ? OUTCOMES[finding.outcome] : '',
    differenceMm && last?.id === reading.id ? differenceText(differenceMm, unit) : '',
  ];
}

function otherTable({ otherReadings }: WheelEnd, unit: LengthUnit): Part {
  const rows = otherReadings.map((reading) => [
    readingName(reading),
    purposeText(reading.purpose),
    dialText(reading.valueMm, unit),
    reading.limitMm === null ? REPORT.notSaid : limitOfReadingText(reading, unit),
    reading.limitMm === null ? '' : reading.limitSource || REPORT.notSaid,
  ]);
  return { kind: 'table', table: { columns: END.otherColumns, rows } };
}

/** Side by side what was measured both times. */
function recheckTable({ asFound, afterRepair, changeMm }: WheelEndResults, unit: LengthUnit): Part {
  const length = (label: string, before: WithU | null, after: WithU | null, change: WithU | null) =>
    before && after && change
      ? [
          [
            label,
            measuredLengthText(before, unit),
            measuredLengthText(after, unit),
            differenceText(change, unit),
          ],
        ]
      : [];
  const free = [asFound.freeStrokeMm, afterRepair.freeStrokeMm] as const;
  const angles = [asFound, afterRepair].map(angleApplied);
  const [before, after] = angles;
  const rows = [
    ...length(END.stroke, asFound.strokeMm, afterRepair.strokeMm, changeMm),
    ...length(END.freeStroke, ...free, free[0] && free[1] && differenceOf(free[1], free[0])),
    ...(before && after ? [[END.angleApplied, measuredAngleText(before), measuredAngleText(after), '']] : []),
  ];
  return { kind: 'table', table: { columns: END.recheckColumns, rows } };
}

function angleApplied({ measurement }: PurposeResults) {
  const measured = measurement?.assessment?.measurement;
  return measured?.ok ? measured.value.armAngleAppliedRad : null;
}
