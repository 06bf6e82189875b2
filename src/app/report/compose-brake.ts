/** The brake itself: the chamber as it was identified, the over-stroke mark, the adjuster. */
import type { Fact, PictureRef, Section } from '../../evidence/report-model.ts';
import { adjusterOutcome } from '../../record/adjuster-outcome.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import { angleText, uAngleText } from '../words/curve.ts';
import { STATE_NAMES } from '../words/en.ts';
import { chamberText } from '../words/given.ts';
import { BAND_CHOICES } from '../words/paint.ts';
import { ADJUSTER_ANSWERS, END, purposeText, REPORT, SIGHT_NAMES } from '../words/report.ts';
import { lengthText } from '../words/values.ts';
import { ADJUSTER_NAMES, BRAKE_NAMES, LOOKS, PORT_BOSS_NAMES, TAG_NAMES } from '../words/wheel-end.ts';
import { viewOf } from '../work/current.ts';
import type { ReportInput } from './compose-report.ts';
import { pictureRef } from './picture-ref.ts';
import { chamberKey, overStrokeKey, PURPOSES_SHOWN, shownMeasurement, turnKey } from './report-pictures.ts';
import { said, section } from './section.ts';

export function brakeSections(input: ReportInput, index: number): Section[] {
  const wheelEnd = input.record.wheelEnds[index];
  if (!wheelEnd) return [];
  return [
    ...section(
      END.identification,
      [
        { kind: 'facts', facts: chamberFacts(wheelEnd, input) },
        { kind: 'lines', lines: notTold(wheelEnd) },
        { kind: 'pictures', size: 'small', pictures: chamberPicture(input, wheelEnd, index) },
      ],
      wheelEnd.identification.captureId === null ? 'label' : 'beside',
    ),
    ...overStroke(input, wheelEnd, index),
    ...section(
      END.adjuster,
      [
        { kind: 'facts', facts: [...adjusterFacts(wheelEnd), ...turnFacts(input, wheelEnd)] },
        { kind: 'pictures', size: 'small', pictures: turns(input, wheelEnd, index) },
      ],
      (wheelEnd.adjusterCheck?.turns.length ?? 0) === 0 ? 'label' : 'beside',
    ),
  ];
}

function chamberFacts({ chamber, identification }: WheelEnd, { unit }: ReportInput): Fact[] {
  const { portBoss, tag, marking, brake } = identification;
  const length = (mm: number | null | undefined) =>
    typeof mm === 'number' ? lengthText(mm, unit) : REPORT.none;
  return [
    said(END.chamber, chamber && chamberText(chamber)),
    said(LOOKS.portBoss, portBoss && PORT_BOSS_NAMES[portBoss]),
    said(LOOKS.tag, tag && TAG_NAMES[tag]),
    said(LOOKS.brake, brake && BRAKE_NAMES[brake]),
    { label: LOOKS.marking, value: marking || REPORT.none },
    { label: END.ratedStroke, value: length(chamber?.ratedStrokeMm) },
    ...(typeof chamber?.markedLimitMm === 'number'
      ? [{ label: END.markedLimit, value: length(chamber.markedLimitMm) }]
      : []),
  ];
}

function notTold({ identification: { portBoss, tag, brake } }: WheelEnd): string[] {
  const asked = [
    [LOOKS.portBoss, portBoss],
    [LOOKS.tag, tag],
    [LOOKS.brake, brake],
  ] as const;
  const untold = asked.filter(([, answer]) => answer === 'cannot-tell').map(([label]) => label.toLowerCase());
  return untold.length > 0 ? [END.couldNotTell(untold.join(', '))] : [];
}

function chamberPicture({ record }: ReportInput, { identification }: WheelEnd, index: number): PictureRef[] {
  const { captureId } = identification;
  return captureId === null
    ? []
    : [pictureRef(record, chamberKey(index), { captureId, frame: null, name: END.chamberPhoto })];
}

function overStroke(input: ReportInput, wheelEnd: WheelEnd, index: number): Section[] {
  const { record, results } = input;
  const looks = PURPOSES_SHOWN.flatMap((purpose) => {
    const shown = shownMeasurement(wheelEnd, results, index, purpose);
    const bandColour = shown?.input.overStrokeMark.bandColour;
    const named: Fact[] = bandColour
      ? [{ label: END.bandColour(purposeText(purpose)), value: BAND_CHOICES[bandColour] }]
      : [];
    const sights = (['released', 'applied'] as const).flatMap((state) => {
      const look = shown?.input.overStrokeMark[state];
      const view = shown && viewOf(shown.input, state);
      if (!look) return [];
      const fact: Fact = {
        label: `${STATE_NAMES[state]}, ${purposeText(purpose)}`,
        value: SIGHT_NAMES[look.sight],
        look: look.sight === 'seen',
      };
      const picture =
        look.crop && view
          ? [
              pictureRef(record, overStrokeKey(index, purpose, state), {
                ...view,
                name: END.overStrokeCrop(state),
              }),
            ]
          : [];
      return [{ fact, picture }];
    });
    return [...sights, ...named.map((fact) => ({ fact, picture: [] }))];
  });
  return section(
    END.overStroke,
    [
      { kind: 'facts', facts: looks.map(({ fact }) => fact) },
      { kind: 'pictures', size: 'small', pictures: looks.flatMap(({ picture }) => picture) },
    ],
    looks.some(({ picture }) => picture.length > 0) ? 'beside' : 'label',
  );
}

function adjusterFacts({ adjuster, adjusterCheck }: WheelEnd): Fact[] {
  const answer = adjusterCheck?.answer ?? null;
  return [
    said(END.adjusterKind, adjuster && ADJUSTER_NAMES[adjuster]),
    ...(adjusterCheck
      ? [
          {
            ...said(END.adjusterCheck, answer && ADJUSTER_ANSWERS[answer]),
            look: answer !== 'takes-up',
          },
          said(
            END.applications,
            adjusterCheck.applications === null ? null : String(adjusterCheck.applications),
          ),
        ]
      : []),
  ];
}

/** How far the wrench turned, by its pictures: beside what the person answers. */
function turnFacts({ record }: ReportInput, { adjusterCheck }: WheelEnd): Fact[] {
  const outcome = adjusterCheck && adjusterOutcome(record, adjusterCheck);
  if (!outcome?.ok) return [];
  const { turn, decision } = outcome.value;
  const { value, u } = turn.totalRad;
  return [
    { label: END.turned(turn.applications), value: `${angleText(value)}, ${uAngleText(u)}` },
    { label: END.byPictures, value: ADJUSTER_ANSWERS[decision.answer] },
  ];
}

function turns({ record }: ReportInput, { adjusterCheck }: WheelEnd, index: number): PictureRef[] {
  return (adjusterCheck?.turns ?? []).map(({ captureId, frame, applicationsBefore }, turn) =>
    pictureRef(record, turnKey(index, turn), { captureId, frame, name: END.turn(applicationsBefore) }),
  );
}
