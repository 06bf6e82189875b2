/** Tie points that a search found in two pictures, in place of those that one found before; a name a hand has touched stays. */
import type { Mark } from '../../marks/mark.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import type { PlaceTies } from './actions.ts';

/** Begins the name of an automatic tie point, by the picture that was compared with the first. */
const LETTERS: Readonly<Record<BrakeState, string>> = { released: 'r', applied: 'a', pulled: 'p' };

export function placeTies(views: readonly View[], { first, second, ties }: PlaceTies): readonly View[] {
  const letter = LETTERS[second];
  const byHand = new Set(
    views.flatMap(({ marks }) => marks.flatMap((mark) => (isOf(letter, mark, 'hand') ? [mark.tie] : []))),
  );
  const names = freeNames(letter, byHand, ties.length);
  const marksOf = (side: 'first' | 'second') =>
    ties.map(
      (tie, index): Mark => ({
        kind: 'tie-point',
        tie: names[index] ?? '',
        ...tie[side],
        placedBy: 'assist',
      }),
    );
  return views.map((view) => {
    const kept = view.marks.filter((mark) => !isOf(letter, mark, 'assist') || byHand.has(mark.tie));
    if (view.state === first) return { ...view, marks: [...kept, ...marksOf('first')] };
    if (view.state === second) return { ...view, marks: [...kept, ...marksOf('second')] };
    return view;
  });
}

/** How many automatic tie points tie a picture to the first. */
export function automaticTies({ state, marks }: View): number {
  return marks.filter((mark) => isOf(LETTERS[state], mark, 'assist')).length;
}

function isOf(
  letter: string,
  mark: Mark,
  placedBy: Mark['placedBy'],
): mark is Extract<Mark, { kind: 'tie-point' }> {
  return mark.kind === 'tie-point' && mark.placedBy === placedBy && mark.tie.startsWith(letter);
}

function freeNames(letter: string, taken: ReadonlySet<string>, count: number): readonly string[] {
  const names: string[] = [];
  for (let number = 1; names.length < count; number++)
    if (!taken.has(`${letter}${number}`)) names.push(`${letter}${number}`);
  return names;
}
