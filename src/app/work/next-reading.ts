/** The tape reading to propose next, so that a row of graduations is a row of taps. */
import type { View } from '../../marks/view.ts';

export function nextReadingMm(view: View, others: readonly View[], stepMm: number): number | null {
  const here = readingsMm(view);
  const last = here.at(-1);
  if (last === undefined) return others.flatMap((other) => readingsMm(other))[0] ?? null;
  const before = here.at(-2);
  const step = before === undefined || before === last ? stepMm : last - before;
  const next = last + step;
  return next >= 0 && !here.includes(next) ? next : null;
}

function readingsMm(view: View): readonly number[] {
  return view.marks.flatMap((mark) => (mark.kind === 'tape-graduation' ? [mark.readingMm] : []));
}
