/** What was proposed and not yet taken, as the viewer draws it. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { Proposal } from '../../vision/guess-sight.ts';
import type { OfferedMark } from '../viewer/offered-mark.ts';
import { GUESSES } from '../words/guesses.ts';
import { MARK_NAMES } from '../words/marks.ts';

export function guessedMarks(open: readonly Proposal[], unit: LengthUnit): readonly OfferedMark[] {
  return open.flatMap(({ kind, marks }) => {
    const ends = [marks[0]?.readingMm, marks.at(-1)?.readingMm];
    return marks.map(({ placePx: [xPx, yPx], readingMm }, index) => ({
      id: `${kind} ${index}`,
      xPx,
      yPx,
      minor: kind === 'tape-graduation',
      name:
        kind !== 'tape-graduation'
          ? GUESSES.offered(MARK_NAMES[kind])
          : readingMm !== null && ends.includes(readingMm)
            ? GUESSES.offered(formatLength(readingMm, unit))
            : null,
    }));
  });
}
