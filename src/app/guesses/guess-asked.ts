/** What is known when a picture is guessed at: the marks of the picture before it. */
import type { Mark, MarkKind } from '../../marks/mark.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { GuessedKind, GuessQuestion, Proposal } from '../../vision/guess-sight.ts';
import { askedMarks } from '../work/asked-marks.ts';

const LEAST_GRADUATIONS = 4;

/** The first picture is guessed at by itself: what comes later never changes what was proposed there. */
export function guessAsked({ views }: Pick<MeasurementInput, 'views'>, state: BrakeState): GuessQuestion {
  const first = state === 'released' ? undefined : views.find((view) => view.state === 'released');
  return { tape: [], other: first ? knownOf(first.marks) : null };
}

function knownOf(marks: readonly Mark[]): GuessQuestion['other'] {
  const tape = marks.flatMap((mark) =>
    mark.kind === 'tape-graduation'
      ? [{ placePx: [mark.xPx, mark.yPx] as const, readingMm: mark.readingMm }]
      : [],
  );
  const pinPx = placeOf(marks, 'clevis-pin');
  return tape.length >= LEAST_GRADUATIONS && pinPx
    ? { tape, pinPx, camshaftPx: placeOf(marks, 'camshaft-end') }
    : null;
}

function placeOf(marks: readonly Mark[], kind: MarkKind): readonly [number, number] | null {
  const mark = marks.find((each) => each.kind === kind);
  return mark ? [mark.xPx, mark.yPx] : null;
}

/** Of kinds that are asked for and not marked yet: a mark of the hand is never met with another. */
export function openProposals(
  view: View,
  measurement: MeasurementInput,
  proposals: readonly Proposal[],
): readonly Proposal[] {
  const asked = askedMarks(view, measurement).filter(({ have }) => have === 0);
  return proposals.filter(({ kind }) => asked.some((each) => each.kind === kind));
}

export function marksProposed({ kind, marks }: Proposal, newId: () => string): readonly Mark[] {
  return marks.map(({ placePx: [xPx, yPx], sigmaPx, readingMm }): Mark => {
    const placed = { id: newId(), xPx, yPx, sigmaPx, placedBy: 'assist' } as const;
    return kind === 'tape-graduation'
      ? { kind, readingMm: readingMm ?? 0, ...placed }
      : { kind: kind satisfies GuessedKind, ...placed };
  });
}
