/**
 * A tape's strokes: with the readings of its numerals offered at once; else shown until one is named, then offered with the readings that follow.
 * Where numerals and what is named differ, neither is offered before the person has said which holds.
 */
import type { Mark } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import {
  isReadSo,
  isWholeInch,
  nameStrokes,
  quarterAt,
  readingAt,
  type TapeLie,
  tapeLie,
} from '../../vision/name-strokes.ts';
import { type Asked, asNamed, endMarks, graduationsOf } from './assist-asked.ts';
import type { AssistSearch } from './assists-store.ts';

type Searched = Asked & { readonly search: AssistSearch | null };

/**
 * Null where one is named and does not fit them, or none were found: a second one has to be named then, and the step asks for it. others: the
 * other pictures of the measurement, which may show the same tape.
 */
export function namedStrokes<S extends Searched>(
  asked: S,
  marks: readonly Mark[],
  others: readonly Pick<View, 'marks'>[],
): S | null {
  const { question, search } = asked;
  if (question.of !== 'tape-strokes') return asked;
  const named = asked.instead[0];
  if (search?.is === 'failed' && named) return null;
  if (search?.is !== 'found') return asked;
  const ends = endMarks(marks);
  if (named?.kind !== 'tape-graduation' || !ends)
    return search.isRead
      ? asked
      : { ...asked, search: { is: 'seen', marks: search.marks.filter(isWholeInch) } };
  const byTyped = () => nameStrokes(search.marks, asNamed(named), ends, liesIn(others));
  if (!search.isRead) {
    const found = byTyped();
    return found && { ...asked, search: { is: 'found', marks: found } };
  }
  const { readingMm } = named;
  const readMm = readingAt(search.marks, [named.xPx, named.yPx]);
  if (readMm === null) return null;
  if (isReadSo(readMm, readingMm)) return asked;
  const doubt = { typedMm: readingMm, readMm: quarterAt(readMm), byTyped: byTyped(), byRead: search.marks };
  return { ...asked, search: { is: 'doubted', doubt } };
}

const liesIn = (others: readonly Pick<View, 'marks'>[]): readonly TapeLie[] =>
  others.flatMap(({ marks }) => {
    const ends = endMarks(marks);
    const lie = ends && tapeLie(graduationsOf(marks).map(asNamed), ends);
    return lie ?? [];
  });
