/**
 * The printed target: one row of coded square markers on a strip that is laid along the rod.
 *
 * Frame  nominal millimetres of the print; u along the strip to the right, v down, origin at the left end of its lower edge.
 *        Corners of a marker: 0 top left, 1 top right, 2 bottom right, 3 bottom left, as printed.
 */
export const CARD = { widthMm: 196, heightMm: 36 } as const;

/** Outer side of a marker's black border. */
export const MARKER_SIDE_MM = 24;
export const MARKER_COUNT = 6;
/** A white rim of one cell at least stays round every marker. */
const FIRST_LEFT_MM = 6;
const PITCH_MM = 32;
const BOTTOM_MM = -6;

/** A print is at its size when this line, drawn beside the strip, measures so. */
export const CHECK_LINE_MM = 100;

export type CardPoint = { readonly uMm: number; readonly vMm: number };

/** null for a marker that the card does not have. */
export function targetCorner(marker: number, corner: number): CardPoint | null {
  if (!(Number.isInteger(marker) && marker >= 0 && marker < MARKER_COUNT)) return null;
  const right = corner === 1 || corner === 2;
  const low = corner === 2 || corner === 3;
  return {
    uMm: FIRST_LEFT_MM + marker * PITCH_MM + (right ? MARKER_SIDE_MM : 0),
    vMm: BOTTOM_MM - (low ? 0 : MARKER_SIDE_MM),
  };
}
