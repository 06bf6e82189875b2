/** What was found and not yet taken, as the viewer draws it. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { FoundMark } from '../../vision/assist-sight.ts';
import { isWholeInch } from '../../vision/name-strokes.ts';
import { LINES } from '../viewer/found-line.ts';
import type { OfferedMark } from '../viewer/offered-mark.ts';
import { ASSISTS } from '../words/assists.ts';
import { MARK_NAMES } from '../words/marks.ts';
import { kindOf } from './assist-asked.ts';
import type { Assist } from './use-assists.ts';

export function offeredMarks(assists: readonly Assist[], unit: LengthUnit): readonly OfferedMark[] {
  return assists.flatMap(({ key, question, search }) => {
    if (search?.is !== 'found' && search?.is !== 'seen') return [];
    // Beside the hand's own marks stand their names already; what is only seen has none.
    const named = search.is === 'found' ? farReading(question.of, search.marks) : null;
    return search.marks.map(({ placePx: [xPx, yPx], readingMm }, index) => ({
      id: `${key} ${index}`,
      xPx,
      yPx,
      line: LINES[kindOf(question.of)] ?? null,
      name: nameOf(question.of, readingMm, named, unit),
    }));
  });
}

function farReading(of: Assist['question']['of'], marks: readonly FoundMark[]): number | null {
  if (of === 'tape-again') return marks.at(-1)?.readingMm ?? null;
  // A whole one has its numeral beside it.
  return of === 'tape-strokes' ? (marks.filter(isWholeInch).at(-1)?.readingMm ?? null) : null;
}

/** Of many, the one that a hand has not named. */
function nameOf(
  of: Assist['question']['of'],
  readingMm: number | null,
  namedMm: number | null,
  unit: LengthUnit,
): string | null {
  if (of === 'clamp-band' || of === 'tape-edge') return null;
  if (of !== 'tape' && of !== 'tape-again' && of !== 'tape-strokes') return ASSISTS.offered(MARK_NAMES[of]);
  return readingMm !== null && readingMm === namedMm ? ASSISTS.offered(formatLength(readingMm, unit)) : null;
}
