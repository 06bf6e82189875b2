/**
 * The part of a rest that is read: without the ends, where a change of course is found a frame or two late or early, and without
 * the soft last part of the movement before.
 */
import type { Phase } from './clip-measurement.ts';

const CUT = { released: { begin: 0.3, end: 0.1 }, held: { begin: 0.3, end: 0.1 } };
const LEAST_CUT = 2;
/** A rest this short is read as it is. */
const SHORT = 8;

export function restingPart({ kind, from, to }: Phase): { readonly from: number; readonly to: number } {
  const count = to - from + 1;
  if (count <= SHORT || (kind !== 'released' && kind !== 'held')) return { from, to };
  const cut = (share: number) => Math.max(LEAST_CUT, Math.round(share * count));
  return { from: from + cut(CUT[kind].begin), to: to - cut(CUT[kind].end) };
}
