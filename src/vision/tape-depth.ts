/**
 * How large things are seen at a tape that is held at any angle: pixels for a millimetre square to the line of sight.
 *
 * Model    readings lie on a line of the picture at s = (a + b v) / (1 + c v) (projective-scale.ts): the point at v is P0 + v d, seen at
 *          f X / Z; from the picture's middle p(v) = (p0 + p1 v) / (1 + c v) with p1 = f (dx, dy) / Z0, c = dz / Z0; as |d| is half the range, in
 *          millimetres, f / Z0 = sqrt(|p1|^2 + c^2 f^2) / half, and f / Z = (f / Z0) / (1 + c v)
 *          u: of its logarithm, by how surely the marks tell c
 * Assumes  the usual focal length of phones: one off by a tenth changes it by 2 % where the tape is 25 degrees slanted, by nothing where it is not
 * Fails    null below four readings, or where they leave c open
 */
import { choleskyFactor, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { fitScale, type ProjectiveScale, scaleThrough, valueAt } from './projective-scale.ts';
import type { Lens } from './usual-lens.ts';

export type TapeReading = { readonly placePx: Point; readonly sigmaPx: number; readonly readingMm: number };
/** focalPx / pxPerMm: how far the camera is, mm, along its line of sight. */
export type ScaleThere = { readonly pxPerMm: number; readonly u: number };

/** aboutPx: beside the tape. */
export function scaleBeside(
  readings: readonly TapeReading[],
  aboutPx: Point,
  { middle, focalPx }: Lens,
): ScaleThere | null {
  const sorted = readings.toSorted((p, q) => p.readingMm - q.readingMm);
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (sorted.length < 4 || !low || !high) return null;
  const lengthPx = apart(low.placePx, high.placePx);
  const [dx, dy] = minus(high.placePx, low.placePx);
  const way: Point = [dx / lengthPx, dy / lengthPx];
  const alongOf = (point: Point) => dot(minus(point, low.placePx), way);
  const start = scaleThrough(low.readingMm, high.readingMm, [0, lengthPx / 2, lengthPx]);
  const fitted = fitScale(
    start,
    sorted.map(({ placePx, sigmaPx, readingMm }) => ({
      value: readingMm,
      s: alongOf(placePx),
      weight: 1 / sigmaPx ** 2,
    })),
  );
  const uSlant = fitted && slantU(fitted.scale, sorted);
  if (!fitted || uSlant === null) return null;
  const scaleAt = (slant: number): number => {
    const { a, b, middle: valueMid, half } = fitted.scale;
    const [p0x, p0y] = minus([low.placePx[0] + a * way[0], low.placePx[1] + a * way[1]], middle);
    const perV = b - a * fitted.scale.c;
    const [p1x, p1y] = [perV * way[0] + slant * p0x, perV * way[1] + slant * p0y];
    const v = (valueAt(fitted.scale, alongOf(aboutPx)) - valueMid) / half;
    return Math.sqrt(p1x ** 2 + p1y ** 2 + (slant * focalPx) ** 2) / (half * (1 + slant * v));
  };
  const { c } = fitted.scale;
  const pxPerMm = scaleAt(c);
  const u = Math.max(
    ...[c - uSlant, c + uSlant].map((slant) => Math.abs(Math.log(scaleAt(slant) / pxPerMm))),
  );
  return { pxPerMm, u };
}

/** Standard uncertainty of c, a and b free. */
function slantU({ a, b, c, middle, half }: ProjectiveScale, readings: readonly TapeReading[]): number | null {
  const normal = new Float64Array(9);
  for (const { readingMm, sigmaPx } of readings) {
    const v = (readingMm - middle) / half;
    const below = 1 + c * v;
    const row = [1 / below, v / below, (-(a + b * v) * v) / below ** 2];
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++)
        normal[3 * i + j] =
          (normal[3 * i + j] as number) + ((row[i] as number) * (row[j] as number)) / sigmaPx ** 2;
  }
  const lower = choleskyFactor(normal, 3);
  return lower && Math.sqrt(inverseFromLower(lowerInverse(lower, 3), 3)[8] as number);
}
