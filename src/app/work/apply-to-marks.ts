import type { Mark } from '../../marks/mark.ts';
import type { PlacedPoint } from '../../marks/placement.ts';
import type { MarkAction } from './actions.ts';

export function applyToMarks(marks: readonly Mark[], action: MarkAction): readonly Mark[] {
  switch (action.type) {
    case 'place-mark':
      return [...marks.filter(({ id }) => id !== action.mark.id), action.mark];
    case 'place-target':
      return [...marks.filter(({ kind }) => kind !== 'target-corner'), ...action.marks];
    case 'take-found':
      return [...marks.filter(({ id }) => !action.instead.includes(id)), ...action.marks];
    case 'move-mark':
      return marks.map((mark) => (mark.id === action.markId ? byHand(mark, action.point) : mark));
    case 'delete-mark':
      return marks.filter(({ id }) => id !== action.markId);
    case 'set-reading':
      return marks.map((mark) =>
        mark.id === action.markId && mark.kind === 'tape-graduation'
          ? { ...mark, readingMm: action.readingMm }
          : mark,
      );
  }
}

/** Where a hand puts it, it stands for itself. */
function byHand({ followedFrom: _, carriedFrom: __, ...mark }: Mark, point: PlacedPoint): Mark {
  return { ...mark, ...point, placedBy: 'hand' };
}
