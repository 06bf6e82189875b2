/** What was found and not yet taken, as the viewer draws it. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { FoundMark } from '../../vision/assist-sight.ts';
import { isWholeInch } from '../../vision/name-strokes.ts';
import { LINES } from '../viewer/found-line.ts';
import type { OfferedMark } from '../viewer/offered-mark.ts';
import { ASSISTS } from '../words/assists.ts';
import { MARK_NAMES } from '../words/marks.ts';
import { isTape, kindOf } from './assist-asked.ts';
import type { Assist } from './use-assists.ts';

export function offeredMarks(assists: readonly Assist[], unit: LengthUnit): readonly OfferedMark[] {
  return assists.flatMap(({ key, question, instead, search }) => {
    if (search?.is === 'several')
      return search.marks.flatMap((mark, i) =>
        edgeOf(`${key} ${i}`, mark, search.marks.length > 1 ? `${i + 1}` : null),
      );
    if (search?.is !== 'found' && search?.is !== 'seen') return [];
    // Beside the hand's own marks stand their names already; what is only seen has none.
    const named = search.is === 'found' ? namedReadings(question.of, search.marks, instead.length > 0) : [];
    return search.marks.map(({ placePx: [xPx, yPx], readingMm }, index) => ({
      id: `${key} ${index}`,
      xPx,
      yPx,
      line: LINES[kindOf(question.of)] ?? null,
      name: nameOf(question.of, readingMm, named, unit),
    }));
  });
}

/** The name stands at its end. */
function edgeOf(id: string, { edgePx }: FoundMark, name: string | null): readonly OfferedMark[] {
  const end = edgePx?.at(-1);
  if (!edgePx || !end) return [];
  const points = edgePx.map(([xPx, yPx]) => ({ xPx, yPx }));
  return [{ id, xPx: end[0], yPx: end[1], name, line: null, edge: points }];
}

/** What is to be looked at on the tape: the far one, and where a hand named none the near one too. */
function namedReadings(
  of: Assist['question']['of'],
  marks: readonly FoundMark[],
  isOneByHand: boolean,
): readonly (number | null)[] {
  if (of !== 'tape-strokes') return [];
  // A whole one has its numeral beside it.
  const wholes = marks.filter(isWholeInch).map(({ readingMm }) => readingMm);
  return (isOneByHand ? wholes.slice(-1) : [wholes[0], wholes.at(-1)]).map((mm) => mm ?? null);
}

/** Of many, those that a hand has not named. */
function nameOf(
  of: Assist['question']['of'],
  readingMm: number | null,
  named: readonly (number | null)[],
  unit: LengthUnit,
): string | null {
  if (of === 'clamp-band' || of === 'tape-edge' || of === 'rod-line') return null;
  if (!isTape(of)) return ASSISTS.offered(MARK_NAMES[kindOf(of)]);
  return readingMm !== null && named.includes(readingMm)
    ? ASSISTS.offered(formatLength(readingMm, unit))
    : null;
}
