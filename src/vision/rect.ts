/** A part of a picture, square to it. */
export type Rect = {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
};
