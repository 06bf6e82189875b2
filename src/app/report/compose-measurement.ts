/** One measurement: its annotated pictures, its clip, its numbers and what they rest on. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { Fact, Part, Section } from '../../evidence/report-model.ts';
import type { ClipMeasurement, Uncertain } from '../../measurement/clip-measurement.ts';
import type { Measured } from '../../measurement/measured.ts';
import type { Measurement } from '../../measurement/measurement.ts';
import type { MeasurementInput, Purpose } from '../../record/measurement-input.ts';
import { playedClipsOf } from '../../record/played-clips.ts';
import type { PurposeResults } from '../../record/purpose-results.ts';
import {
  APPLICATIONS,
  CURVE,
  clipWarningText,
  creepAndUText,
  strokeAndUText,
  timeAndUText,
} from '../words/curve.ts';
import { armText, referenceText } from '../words/given.ts';
import { MARK_NAMES } from '../words/marks.ts';
import { playedText } from '../words/played.ts';
import { END, pictureCaption, REPORT, SUMMARY } from '../words/report.ts';
import { BUDGET, BUDGET_NAMES, chanceText, fitText, WORST_MARK } from '../words/uncertainty.ts';
import { measuredAngleText, measuredLengthText, uText } from '../words/values.ts';
import { WHEEL_END } from '../words/wheel-end.ts';
import type { ReportInput } from './compose-report.ts';
import { pictureRef } from './picture-ref.ts';
import { chartKey, shownMeasurement, viewKey } from './report-pictures.ts';
import { section } from './section.ts';

export function measurementSections(input: ReportInput, end: number, purpose: Purpose): Section[] {
  const { record, results, unit } = input;
  const wheelEnd = record.wheelEnds[end];
  const shown = wheelEnd && shownMeasurement(wheelEnd, results, end, purpose);
  if (!wheelEnd || !shown) return [];
  const pictures = shown.input.views.map(({ state, captureId, frame }) =>
    pictureRef(record, viewKey(end, purpose, state), { captureId, frame, name: pictureCaption(state) }),
  );
  const clip = input.clips.get(shown.input.id) ?? null;
  const played = playedClipsOf(record, shown.input);
  const more = wheelEnd.measurements.filter((each) => each.purpose === purpose).length - 1;
  return [
    ...section(
      END.picturesOf(purpose),
      [
        { kind: 'pictures', pictures, size: 'large' },
        { kind: 'lines', lines: more > 0 ? [END.earlier(more, purpose)] : [] },
        { kind: 'lines', lines: played.length > 0 ? [playedText(played)] : [] },
      ],
      'wide',
    ),
    ...(clip ? section(END.chartOf(purpose), clipParts(clip, chartKey(end, purpose), unit), 'wide') : []),
    ...(shown.measured
      ? section(
          END.numbersOf(purpose),
          [
            { kind: 'facts', facts: quantities(input, shown.measured, shown.of) },
            { kind: 'facts', facts: grounds(input, shown.input, shown.measured) },
            { kind: 'lines', lines: [fitText(shown.measured.fit)], look: shown.measured.fit.inflation > 1 },
            budget(shown.measured),
          ],
          'beside',
        )
      : []),
  ];
}

function clipParts(clip: ClipMeasurement, key: string, unit: LengthUnit): Part[] {
  const { applications, pictured, longer, spreadMm, warnings } = clip;
  const timed = (time: Uncertain | null) => (time ? timeAndUText(time).join(', ') : APPLICATIONS.notShown);
  const rows = applications.map(({ strokeMm, toNinetyPercentS, toFullS, releaseS, creepMmPerS }, i) => [
    APPLICATIONS.number(i + 1),
    measuredLengthText(strokeMm, unit),
    timed(toNinetyPercentS),
    timed(toFullS),
    timed(releaseS),
    creepMmPerS ? creepAndUText(creepMmPerS, unit).join(', ') : APPLICATIONS.notShown,
  ]);
  const { stroke, ninety, full, release, creep } = APPLICATIONS;
  const spread = spreadMm ? [`${APPLICATIONS.spread}: ${strokeAndUText(spreadMm, unit)}.`] : [];
  const which = pictured !== null && applications.length > 1 ? [APPLICATIONS.pictured(pictured + 1)] : [];
  const warned = [
    ...warnings.map((warning) => clipWarningText(warning, unit)),
    ...(longer === null ? [] : [APPLICATIONS.longer(longer + 1)]),
  ];
  return [
    { kind: 'drawing', key },
    { kind: 'lines', lines: [CURVE.key, ...which, ...spread] },
    { kind: 'lines', lines: warned, look: true },
    { kind: 'table', table: { columns: ['', stroke, ninety, full, release, creep], rows } },
  ];
}

function quantities(
  { unit }: ReportInput,
  measured: Measurement,
  { freeStrokeMm, powerStrokeMm }: PurposeResults,
): Fact[] {
  const { strokeMm, straightLineChangeMm, armAngleReleasedRad, armAngleAppliedRad } = measured;
  const byHand = freeStrokeMm?.basis === 'hand';
  const free = freeStrokeMm && measuredLengthText(freeStrokeMm, unit);
  const power = powerStrokeMm && measuredLengthText(powerStrokeMm, unit);
  const angle = (value: Measured | null) => value && measuredAngleText(value);
  const all = [
    [END.stroke, measuredLengthText(strokeMm, unit)],
    [END.straight, measuredLengthText(straightLineChangeMm, unit)],
    [END.freeStroke, free && byHand ? SUMMARY.byHand(free) : free],
    [WHEEL_END.powerStroke, power && byHand ? END.freeByHand(power) : power],
    [END.angleReleased, angle(armAngleReleasedRad)],
    [END.angleApplied, angle(armAngleAppliedRad)],
  ] as const;
  return all.flatMap(([label, value]) => (value === null ? [] : [{ label, value }]));
}

function grounds({ record, unit }: ReportInput, input: MeasurementInput, { fit }: Measurement): Fact[] {
  const marks = input.views.flatMap((view) => view.marks);
  const byHand = marks.filter(({ placedBy }) => placedBy === 'hand').length;
  const { worstMark } = fit;
  const worst = worstMark
    ? [
        {
          label: END.worst,
          value: `${MARK_NAMES[worstMark.kind]}, ${worstMark.state}: ${WORST_MARK.off(worstMark.standardisedResidual)}`,
        },
      ]
    : [];
  return [
    { label: END.reference, value: referenceText(input.references, unit) },
    ...(input.references.armLength ? [{ label: END.arm, value: armText(input.references, unit) }] : []),
    { label: END.camera, value: cameraText(record, input) },
    { label: END.marks, value: END.marksCount(marks.length, byHand) },
    {
      label: END.chiSquare,
      value: `${fit.chiSquare.toFixed(1)}; ${fit.degreesOfFreedom.toFixed(1)}; ${chanceText(fit.pValue)}`,
    },
    ...worst,
  ];
}

function cameraText({ cameraProfiles, captures }: ReportInput['record'], input: MeasurementInput): string {
  const profile = cameraProfiles.find(({ id }) => id === input.cameraProfileId);
  const capture = captures.find(({ id }) => id === input.views[0]?.captureId);
  const focal = capture?.focal35Mm ?? null;
  const lens = focal === null ? END.cameraUsual : END.cameraFocal(focal);
  const still = input.cameraStill ? END.cameraStill : END.cameraHeld;
  return [profile ? END.cameraCalibrated(profile.name || REPORT.notSaid) : lens, still].join('; ');
}

/** Largest first; what adds less than a hundredth of the square is not worth a line. */
function budget({ strokeMm: { budget: parts, u } }: Measurement): Part {
  const rows = parts
    .map((part) => ({ ...part, share: (part.u / u) ** 2 }))
    .filter(({ share }) => share >= 0.01)
    .sort((a, b) => b.share - a.share)
    .map((part) => [BUDGET_NAMES[part.group], BUDGET.share(part.share), uText(part.u)]);
  return { kind: 'table', table: { columns: END.budgetColumns, rows } };
}
