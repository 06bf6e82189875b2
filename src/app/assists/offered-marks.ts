/** What was found and not yet taken, as the viewer draws it. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { OfferedMark } from '../viewer/offered-mark.ts';
import { ASSISTS } from '../words/assists.ts';
import { MARK_NAMES } from '../words/marks.ts';
import type { Assist } from './use-assists.ts';

export function offeredMarks(assists: readonly Assist[], unit: LengthUnit): readonly OfferedMark[] {
  return assists.flatMap(({ key, question, instead, search }) => {
    if (search?.is !== 'found') return [];
    const many = question.of === 'tape' || question.of === 'clamp-band';
    return search.marks.map(({ placePx: [xPx, yPx], readingMm }, index) => ({
      id: `${key} ${index}`,
      xPx,
      yPx,
      minor: many,
      name: nameOf(question.of, readingMm, instead, unit),
    }));
  });
}

/** Of many, those that the hand had named. */
function nameOf(
  of: Assist['question']['of'],
  readingMm: number | null,
  instead: Assist['instead'],
  unit: LengthUnit,
): string | null {
  if (of === 'clamp-band') return null;
  if (of !== 'tape') return ASSISTS.offered(MARK_NAMES[of]);
  const named = instead.some((mark) => mark.kind === 'tape-graduation' && mark.readingMm === readingMm);
  return named && readingMm !== null ? ASSISTS.offered(formatLength(readingMm, unit)) : null;
}
