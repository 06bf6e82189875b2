/** The tape reading to propose next, so that a row of graduations is a row of taps: two far apart, then the widest gap is halved. */
import { mmFromInches } from '../../basics/units.ts';
import type { View } from '../../marks/view.ts';

/** Clear of the hook, and seen beyond the pin: those between are found by themselves. */
const FIRST_MM = mmFromInches(2);
const SECOND_MM = mmFromInches(9);
/** Steps apart, from where on a person means two ends and not a row. */
const FAR = 6;

export function nextReadingMm(view: View, others: readonly View[], stepMm: number): number | null {
  const here = readingsMm(view);
  const there = others.flatMap((other) => readingsMm(other));
  const whole = (mm: number) => stepMm * Math.round(mm / stepMm);
  const seen = (mm: number) => there.length === 0 || there.some((other) => Math.abs(other - mm) < 0.01);
  const last = here.at(-1);
  if (last === undefined) return seen(whole(FIRST_MM)) ? whole(FIRST_MM) : (there[0] ?? null);
  const before = here.at(-2);
  if (before === undefined) {
    const far = whole(SECOND_MM);
    return seen(far) && far - last >= FAR * stepMm - 0.01 ? far : last + stepMm;
  }
  const step = last === before ? stepMm : last - before;
  if (Math.abs(step) >= FAR * stepMm - 0.01) return whole((last + before) / 2);
  const next = last + step;
  return next >= 0 && !here.includes(next) ? next : null;
}

function readingsMm(view: View): readonly number[] {
  return view.marks.flatMap((mark) => (mark.kind === 'tape-graduation' ? [mark.readingMm] : []));
}
