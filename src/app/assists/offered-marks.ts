/** What was found and not yet taken, as the viewer draws it. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { Mark } from '../../marks/mark.ts';
import type { OfferedMark } from '../viewer/offered-mark.ts';
import { ASSISTS } from '../words/assists.ts';
import { MARK_NAMES } from '../words/marks.ts';
import type { Assist } from './use-assists.ts';

export function offeredMarks(assists: readonly Assist[], unit: LengthUnit): readonly OfferedMark[] {
  return assists.flatMap(({ key, question, instead, search }) => {
    if (search?.is !== 'found') return [];
    const many = question.of === 'tape' || question.of === 'tape-again';
    const ends = [search.marks[0], search.marks.at(-1)].map((mark) => mark?.readingMm ?? null);
    return search.marks.map(({ placePx: [xPx, yPx], readingMm }, index) => ({
      id: `${key} ${index}`,
      xPx,
      yPx,
      minor: many,
      name: nameOf(question.of, readingMm, [...ends, ...instead.map(readingOf)], unit),
    }));
  });
}

const readingOf = (mark: Mark) => (mark.kind === 'tape-graduation' ? mark.readingMm : null);

/** Of many, the ends and those that the hand had named. */
function nameOf(
  of: Assist['question']['of'],
  readingMm: number | null,
  named: readonly (number | null)[],
  unit: LengthUnit,
): string | null {
  if (of !== 'tape' && of !== 'tape-again') return ASSISTS.offered(MARK_NAMES[of]);
  return readingMm !== null && named.includes(readingMm)
    ? ASSISTS.offered(formatLength(readingMm, unit))
    : null;
}
