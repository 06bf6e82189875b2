/** What is to be said about a wheel end beside its finding: codes with their numbers. A note never changes a finding. */

import type { Purpose } from './measurement-input.ts';
import type { PurposeResults } from './purpose-results.ts';
import type { WheelEnd } from './wheel-end.ts';

export type WheelEndNote =
  /** Pictures and hand reading differ by more than their joint U. */
  | {
      readonly code: 'wheel-end/hand-differs';
      readonly purpose: Purpose;
      readonly differenceMm: number;
      readonly U95Mm: number;
    }
  /** One says within the limit, the other over it: nothing is decided. */
  | { readonly code: 'wheel-end/hand-contradicts'; readonly purpose: Purpose }
  /** A repair is written down and the stroke was not measured after it. */
  | { readonly code: 'wheel-end/repair-not-measured' }
  /** Measured after repair, and no repair is written down. */
  | { readonly code: 'wheel-end/repair-not-written-down' };

export function wheelEndNotes(
  { repairs }: WheelEnd,
  asFound: PurposeResults,
  afterRepair: PurposeResults,
): WheelEndNote[] {
  const notes = [asFound, afterRepair].flatMap(handNotes);
  if (repairs.length > 0 && afterRepair.strokeMm === null)
    notes.push({ code: 'wheel-end/repair-not-measured' });
  if (repairs.length === 0 && afterRepair.strokeMm !== null)
    notes.push({ code: 'wheel-end/repair-not-written-down' });
  return notes;
}

function handNotes({ purpose, differenceMm, contradicted }: PurposeResults): WheelEndNote[] {
  const notes: WheelEndNote[] = [];
  if (contradicted) notes.push({ code: 'wheel-end/hand-contradicts', purpose });
  if (differenceMm?.significant)
    notes.push({
      code: 'wheel-end/hand-differs',
      purpose,
      differenceMm: differenceMm.value,
      U95Mm: differenceMm.U95,
    });
  return notes;
}
