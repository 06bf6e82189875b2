/**
 * Marks from the printed target's corners that were found in a picture.
 *
 * Model    sigma^2 = (what the search says)^2 + (PRINT mm x the marker's side in px / its side in mm)^2
 * Assumes  each printed corner is off its place by itself: what a whole print shares is in the check line.
 */
import type { Mark } from '../marks/mark.ts';
import { MARKER_SIDE_MM } from './target-card.ts';

export type FoundCorner = {
  readonly marker: number;
  readonly corner: number;
  readonly xPx: number;
  readonly yPx: number;
  readonly sigmaPx: number;
};

/** Ink's ragged edge and the paper's waves on what it is glued to; common practice, no source. */
const PRINT_MM = 0.03;

export function targetMarks(corners: readonly FoundCorner[], newId: () => string): readonly Mark[] {
  return corners.map(({ marker, corner, xPx, yPx, sigmaPx }) => {
    const pxPerMm = sidePx(corners.filter((each) => each.marker === marker)) / MARKER_SIDE_MM;
    return {
      kind: 'target-corner',
      id: newId(),
      marker,
      corner,
      xPx,
      yPx,
      sigmaPx: Math.hypot(sigmaPx, PRINT_MM * pxPerMm),
      placedBy: 'assist',
    };
  });
}

/** Mean side of a marker of which all four corners were found. */
function sidePx(corners: readonly FoundCorner[]): number {
  const inOrder = [...corners].sort((a, b) => a.corner - b.corner);
  const sides = inOrder.map((a, index) => {
    const b = inOrder[(index + 1) % inOrder.length] ?? a;
    return Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);
  });
  return sides.reduce((sum, side) => sum + side, 0) / sides.length;
}
