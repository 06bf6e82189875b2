/** What is to be said about a wheel end beside its finding: codes with their numbers. A note never changes a finding. */
import { type FreeStrokeBounds, freeStrokeBounds, freeStrokeRange } from '../finding/free-stroke.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import type { RuleId } from '../finding/rule-text.ts';
import type { WithU } from '../measurement/measured.ts';
import { pastSquare } from './arm-square.ts';
import { type ChamberNote, chamberNotes } from './chamber-notes.ts';
import type { Purpose } from './measurement-input.ts';
import { isReadingOver } from './other-readings.ts';
import { differenceOf, type PurposeResults } from './purpose-results.ts';
import { type RepairNote, repairNotes } from './repair-notes.ts';
import type { OtherReading, WheelEnd } from './wheel-end.ts';

export type WheelEndNote =
  | ChamberNote
  | RepairNote
  /** Pictures and hand reading differ by more than their joint U. */
  | {
      readonly code: 'wheel-end/hand-differs';
      readonly purpose: Purpose;
      readonly differenceMm: number;
      readonly U95Mm: number;
    }
  /** One says within the limit, the other over it: nothing is decided. */
  | {
      readonly code: 'wheel-end/hand-contradicts' | 'wheel-end/hand-misread';
      readonly purpose: Purpose;
    }
  | ({
      readonly code: 'wheel-end/free-stroke-short' | 'wheel-end/free-stroke-long';
      readonly purpose: Purpose;
      readonly freeStrokeMm: number;
      readonly U95Mm: number;
      readonly rule: RuleId;
    } & FreeStrokeBounds)
  | {
      readonly code: 'wheel-end/arm-past-square';
      readonly purpose: Purpose;
      readonly angleRad: number;
      readonly U95Rad: number;
      /** Where an arm set square at half this stroke ends; null where the arm's length is not known. */
      readonly halfStrokeRad: number | null;
      readonly isFar: boolean;
      readonly rule: RuleId;
    }
  | {
      readonly code: 'wheel-end/reading-over-limit';
      readonly reading: OtherReading & { readonly limitMm: number };
    }
  /** A repair is written down and the stroke was not measured after it. */
  | { readonly code: 'wheel-end/repair-not-measured' }
  /** Measured after repair, and no repair is written down. */
  | { readonly code: 'wheel-end/repair-not-written-down' }
  /** The stroke after repair differs from the one as found by no more than its U. */
  | { readonly code: 'wheel-end/no-change-proven'; readonly changeMm: number; readonly U95Mm: number };

export function wheelEndNotes(
  wheelEnd: WheelEnd,
  asFound: PurposeResults,
  afterRepair: PurposeResults,
  ruleSet: RuleSet | null,
): WheelEndNote[] {
  const both = [asFound, afterRepair];
  return [
    ...chamberNotes(wheelEnd, sharpestBand(both), ruleSet),
    ...both.flatMap((results) => [
      ...handNotes(results),
      ...(ruleSet ? freeStrokeNotes(results, ruleSet) : []),
      ...armNotes(results),
    ]),
    ...wheelEnd.otherReadings
      .filter(isReadingOver)
      .map((reading) => ({ code: 'wheel-end/reading-over-limit', reading }) as const),
    ...repairNotes(wheelEnd, ruleSet),
    ...recheckNotes(wheelEnd, asFound, afterRepair),
  ];
}

function sharpestBand(both: readonly PurposeResults[]): WithU | null {
  const bands = both.flatMap(({ measurement }) => {
    const measured = measurement?.assessment?.measurement;
    return measured?.ok ? (measured.value.sizes.bandDiameterMm ?? []) : [];
  });
  return bands.sort((a, b) => a.u - b.u)[0] ?? null;
}

function handNotes({ purpose, differenceMm, contradicted, handReadings }: PurposeResults): WheelEndNote[] {
  const notes: WheelEndNote[] = [];
  if (contradicted) notes.push({ code: 'wheel-end/hand-contradicts', purpose });
  if (handReadings.some(({ length }) => !length.ok)) notes.push({ code: 'wheel-end/hand-misread', purpose });
  if (differenceMm?.significant)
    notes.push({
      code: 'wheel-end/hand-differs',
      purpose,
      differenceMm: differenceMm.value,
      U95Mm: differenceMm.U95,
    });
  return notes;
}

function freeStrokeNotes({ purpose, freeStrokeMm }: PurposeResults, ruleSet: RuleSet): WheelEndNote[] {
  if (!freeStrokeMm) return [];
  const range = freeStrokeRange(freeStrokeMm, ruleSet);
  if (range !== 'short' && range !== 'long') return [];
  return [
    {
      code: `wheel-end/free-stroke-${range}`,
      purpose,
      freeStrokeMm: freeStrokeMm.value,
      U95Mm: freeStrokeMm.U95,
      rule: 'free-stroke',
      ...freeStrokeBounds(ruleSet),
    },
  ];
}

function armNotes(results: PurposeResults): WheelEndNote[] {
  const past = pastSquare(results);
  if (!past) return [];
  const { angle, halfStrokeRad, isFar } = past;
  return [
    {
      code: 'wheel-end/arm-past-square',
      purpose: results.purpose,
      angleRad: angle.value,
      U95Rad: angle.U95,
      halfStrokeRad,
      isFar,
      rule: 'arm-near-square',
    },
  ];
}

function recheckNotes(
  { repairs }: WheelEnd,
  { strokeMm: before }: PurposeResults,
  { strokeMm: after }: PurposeResults,
): WheelEndNote[] {
  const notes: WheelEndNote[] = [];
  if (repairs.length > 0 && after === null) notes.push({ code: 'wheel-end/repair-not-measured' });
  if (repairs.length === 0 && after !== null) notes.push({ code: 'wheel-end/repair-not-written-down' });
  const change = before && after && differenceOf(after, before);
  if (change && !change.significant)
    notes.push({ code: 'wheel-end/no-change-proven', changeMm: change.value, U95Mm: change.U95 });
  return notes;
}
