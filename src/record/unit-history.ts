/** Strokes of one unit over its inspections, by wheel end, earliest first. A unit is told by its name as typed and nothing else. */
import type { Outcome } from '../finding/guard-band.ts';
import type { WithU } from '../measurement/measured.ts';
import type { InspectionResults } from './inspection-results.ts';
import type { Purpose } from './measurement-input.ts';
import type { Position } from './wheel-end.ts';

/** What of an inspection is kept for it. */
export type InspectedStroke = {
  readonly position: Position;
  readonly purpose: Purpose;
  readonly strokeMm: WithU;
  readonly outcome: Outcome;
};

export type InspectedStrokes = {
  readonly recordId: string;
  readonly createdAt: string;
  readonly unit: string;
  /** Null where it was never looked at as a whole. */
  readonly strokes: readonly InspectedStroke[] | null;
};

export type DatedStroke = InspectedStroke & { readonly recordId: string; readonly createdAt: string };

export type WheelEndHistory = { readonly position: Position; readonly strokes: readonly DatedStroke[] };

export function inspectedStrokes({ wheelEnds }: InspectionResults): readonly InspectedStroke[] {
  return wheelEnds.flatMap(({ position, asFound, afterRepair }) =>
    [asFound, afterRepair].flatMap(({ purpose, strokeMm, finding }) =>
      strokeMm && finding ? [{ position, purpose, strokeMm, outcome: finding.outcome }] : [],
    ),
  );
}

/** Units are typed by hand: case and spaces do not tell two apart, and one without a name is like no other. */
export function isSameUnit(a: string, b: string): boolean {
  const plain = (unit: string) => unit.trim().replace(/\s+/g, ' ').toLowerCase();
  return plain(a) !== '' && plain(a) === plain(b);
}

export function unitHistory(unit: string, inspections: readonly InspectedStrokes[]): WheelEndHistory[] {
  const dated = inspections
    .filter((inspection) => isSameUnit(inspection.unit, unit))
    .sort((a, b) => Date.parse(a.createdAt) - Date.parse(b.createdAt))
    .flatMap(({ recordId, createdAt, strokes }) =>
      (strokes ?? []).map((stroke): DatedStroke => ({ ...stroke, recordId, createdAt })),
    );
  const byPlace = new Map<string, DatedStroke[]>();
  for (const stroke of dated) {
    const place = `${stroke.position.axle} ${stroke.position.side}`;
    byPlace.set(place, [...(byPlace.get(place) ?? []), stroke]);
  }
  return [...byPlace.values()]
    .flatMap((strokes) => (strokes[0] ? [{ position: strokes[0].position, strokes }] : []))
    .sort((a, b) => a.position.axle - b.position.axle || a.position.side.localeCompare(b.position.side));
}
