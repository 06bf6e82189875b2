/** The printed target's markers: their cells and where their corners are on the card. */
import { assert } from '../basics/result.ts';
import { MARKER_COUNT, targetCorner } from './target-card.ts';
import data from './target-markers.json' with { type: 'json' };

type PlaceMm = readonly [uMm: number, vMm: number];

export type TargetMarker = {
  readonly marker: number;
  /** Inner cells, top row first; 1 white. */
  readonly rows: readonly string[];
  readonly cornersMm: readonly [PlaceMm, PlaceMm, PlaceMm, PlaceMm];
};

export const TARGET_MARKERS: readonly TargetMarker[] = data.markers.map(({ marker, rows }) => ({
  marker,
  rows,
  cornersMm: [placeMm(marker, 0), placeMm(marker, 1), placeMm(marker, 2), placeMm(marker, 3)],
}));

assert(TARGET_MARKERS.length === MARKER_COUNT, 'every marker of the card has its cells');

function placeMm(marker: number, corner: number): PlaceMm {
  const point = targetCorner(marker, corner);
  assert(point, `marker ${marker} is on the card`);
  return [point.uMm, point.vMm];
}
