/** Strokes of one unit over its inspections, by wheel end, earliest first. A unit is told by its name as entered and nothing else. */
import type { InspectionSummary, StrokeInShort } from './inspection-summary.ts';
import type { Position } from './wheel-end.ts';

export type DatedStroke = StrokeInShort & { readonly recordId: string; readonly createdAt: string };

export type WheelEndHistory = { readonly position: Position; readonly strokes: readonly DatedStroke[] };

export function isSameUnit(a: string, b: string): boolean {
  const [one, other] = [a, b].map((unit) => unit.trim().toLowerCase());
  return one !== '' && one === other;
}

export function unitHistory(unit: string, inspections: readonly InspectionSummary[]): WheelEndHistory[] {
  const ofUnit = inspections
    .filter((inspection) => isSameUnit(inspection.unit, unit))
    .sort((a, b) => Date.parse(a.createdAt) - Date.parse(b.createdAt));
  const byPlace = new Map<string, { position: Position; strokes: DatedStroke[] }>();
  for (const { recordId, createdAt, wheelEnds } of ofUnit)
    for (const { position, strokes } of wheelEnds) {
      const place = `${position.axle} ${position.side}`;
      const kept = byPlace.get(place) ?? { position, strokes: [] };
      kept.strokes.push(...strokes.map((stroke) => ({ ...stroke, recordId, createdAt })));
      byPlace.set(place, kept);
    }
  return [...byPlace.values()]
    .filter(({ strokes }) => strokes.length > 0)
    .sort((a, b) => a.position.axle - b.position.axle || a.position.side.localeCompare(b.position.side));
}
