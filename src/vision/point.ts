/** Points of a picture, in pixels from the corner of the first pixel, or of a card. */
export type Point = readonly [x: number, y: number];
/** Corners of a marker: top left first, clockwise as printed. */
export type Quad = readonly [Point, Point, Point, Point];

export const asQuad = ([a, b, c, d]: readonly Point[]): Quad => [a, b, c, d] as Quad;

export const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
/** As Math.hypot, which costs ten times as much. */
export const lengthOf = (x: number, y: number): number => Math.sqrt(x * x + y * y);
export const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
