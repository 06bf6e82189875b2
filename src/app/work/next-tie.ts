/** Which fixed thing to mark next: one that another picture shows already, else a new one, counted from 1. */
import type { View } from '../../marks/view.ts';

export function nextTie(view: View, others: readonly View[]): string {
  const here = tiesOf(view);
  const elsewhere = others.flatMap(tiesByHand).find((tie) => !here.includes(tie));
  if (elsewhere !== undefined) return elsewhere;
  let number = 1;
  while (here.includes(String(number))) number++;
  return String(number);
}

/** A found one whose other half was removed is not asked for. */
function tiesByHand({ marks, ...view }: View): readonly string[] {
  return tiesOf({ ...view, marks: marks.filter(({ placedBy }) => placedBy === 'hand') });
}

function tiesOf({ marks }: View): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'tie-point' ? [mark.tie] : []));
}
