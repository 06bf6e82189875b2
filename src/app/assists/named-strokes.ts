/**
 * A tape's strokes: with the readings of its numerals offered at once; else shown until one is named, then offered with the readings that follow.
 * Where numerals and what is named differ, neither is offered before the person has said which holds.
 */
import type { Mark } from '../../marks/mark.ts';
import { isReadSo, isWholeInch, nameStrokes, quarterAt, readingAt } from '../../vision/name-strokes.ts';
import type { Asked } from './assist-asked.ts';
import type { AssistSearch } from './assists-store.ts';

type Searched = Asked & { readonly search: AssistSearch | null };

/** Null where one is named and does not fit them, or none were found: a second one has to be named then, and the step asks for it. */
export function namedStrokes<S extends Searched>(asked: S, marks: readonly Mark[]): S | null {
  const { question, search } = asked;
  if (question.of !== 'tape-strokes') return asked;
  const named = asked.instead[0];
  if (search?.is === 'failed' && named) return null;
  if (search?.is !== 'found') return asked;
  const face = marks.find(({ kind }) => kind === 'chamber-face');
  if (named?.kind !== 'tape-graduation' || !face)
    return search.isRead
      ? asked
      : { ...asked, search: { is: 'seen', marks: search.marks.filter(isWholeInch) } };
  const { readingMm, sigmaPx } = named;
  const placePx = [named.xPx, named.yPx] as const;
  const byTyped = () => nameStrokes(search.marks, { placePx, readingMm, sigmaPx }, [face.xPx, face.yPx]);
  if (!search.isRead) {
    const found = byTyped();
    return found && { ...asked, search: { is: 'found', marks: found } };
  }
  const readMm = readingAt(search.marks, placePx);
  if (readMm === null) return null;
  if (isReadSo(readMm, readingMm)) return asked;
  const doubt = { typedMm: readingMm, readMm: quarterAt(readMm), byTyped: byTyped(), byRead: search.marks };
  return { ...asked, search: { is: 'doubted', doubt } };
}

/** What the strokes tell need not be sought by what another picture shows. */
export function withoutSecondWay<S extends Searched>(assists: readonly S[]): readonly S[] {
  const told = assists.some(
    ({ question, search }) => question.of === 'tape-strokes' && search?.is !== 'failed',
  );
  return told ? assists.filter(({ question }) => question.of !== 'tape-again') : assists;
}
