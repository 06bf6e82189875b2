/**
 * Corners of a picture, the strongest first: places that are found again in whatever direction they move.
 *
 * Model    slopes by Sobel's masks, the lesser eigenvalue of their products' sums over 3 x 3 pixels, its local maxima; each is kept
 *          unless a stronger one is too near. Beyond its rim the picture is mirrored.
 * Source   Shi, Tomasi, Good features to track, CVPR 1994 (from memory); OpenCV's in tests/vision/corners.test.ts
 */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

const { fround } = Math;
/** Of a step by one level, over the masks' and the levels' sum, in 32 bits as all that follows: alike corners then come in one order. */
const ONCE = fround(1 / 3060);
const TWICE = 2 * ONCE;
/** What masks and sums need beyond a pixel; a maximum, one more. */
const BEYOND = 2;
const RIM = BEYOND + 1;

/** leastShare: of the strongest one's eigenvalue. apartPx: no two are nearer. */
export type Wanted = { readonly most: number; readonly leastShare: number; readonly apartPx: number };

export function corners(gray: Gray, { most, leastShare, apartPx }: Wanted): readonly Point[] {
  const framed = mirrored(gray);
  const { widthPx, heightPx } = framed;
  const strengths = strengthsOf(framed);
  let strongestOne = 0;
  for (let at = 0; at < strengths.length; at++)
    strongestOne = Math.max(strongestOne, strengths[at] as number);
  const strongest = peaksOver(leastShare * strongestOne, strengths, widthPx, heightPx);
  strongest.sort((a, b) => (strengths[b] as number) - (strengths[a] as number) || b - a);
  const covered = new Uint8Array(widthPx * heightPx);
  const found: Point[] = [];
  for (const at of strongest) {
    if (covered[at] === 1) continue;
    const [column, row] = [at % widthPx, Math.floor(at / widthPx)];
    found.push([column - BEYOND + 0.5, row - BEYOND + 0.5]);
    if (found.length === most) break;
    cover(covered, framed, column, row, apartPx);
  }
  return found;
}

/** With so much around it as is needed beyond: the pixel at the rim is not shown twice. */
function mirrored({ widthPx, heightPx, values }: Gray): Gray {
  const [columns, rows] = [widthPx + 2 * BEYOND, heightPx + 2 * BEYOND];
  const framed = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const from = mirroredAt(row - BEYOND, heightPx) * widthPx;
    const into = row * columns;
    framed.set(values.subarray(from, from + widthPx), into + BEYOND);
    for (const column of [-2, -1, widthPx, widthPx + 1])
      framed[into + BEYOND + column] = values[from + mirroredAt(column, widthPx)] as number;
  }
  return { widthPx: columns, heightPx: rows, values: framed };
}

const mirroredAt = (i: number, count: number) => (i < 0 ? -i : i < count ? i : 2 * count - 2 - i);

/** The lesser eigenvalue at each pixel; 0 in the rim. */
function strengthsOf({ widthPx, heightPx, values }: Gray): Float32Array {
  const strengths = new Float32Array(widthPx * heightPx);
  const products = new Float32Array(3 * widthPx);
  // Of three rows the sums along the row, the oldest written over by the next.
  const sums = [0, 1, 2].map(() => new Float64Array(3 * widthPx)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let row = 1; row < heightPx - 1; row++) {
    for (let column = 1, at = row * widthPx + 1, k = 3; column < widthPx - 1; column++, at++, k += 3) {
      const above = at - widthPx;
      const below = at + widthPx;
      const leftTop = values[above - 1] as number;
      const rightTop = values[above + 1] as number;
      const leftLow = values[below - 1] as number;
      const rightLow = values[below + 1] as number;
      const across = (values[at + 1] as number) - (values[at - 1] as number);
      const x = fround(fround(TWICE * across) + fround(ONCE * (rightTop - leftTop + rightLow - leftLow)));
      const low = fround(fround(TWICE * (values[below] as number)) + fround(ONCE * (leftLow + rightLow)));
      const top = fround(fround(TWICE * (values[above] as number)) + fround(ONCE * (leftTop + rightTop)));
      const y = fround(low - top);
      products[k] = x * x;
      products[k + 1] = x * y;
      products[k + 2] = y * y;
    }
    mirrorProducts(products, widthPx, row === 1 || row === heightPx - 2);
    const own = sums[row % 3] as Float64Array;
    for (let k = 6; k < 3 * (widthPx - 2); k++)
      own[k] = (products[k - 3] as number) + (products[k] as number) + (products[k + 3] as number);
    if (row < RIM) continue;
    const [a, b, c] = sums;
    for (let column = 2, k = 6, at = (row - 1) * widthPx + 2; column < widthPx - 2; column++, k += 3, at++) {
      const x = fround((a[k] as number) + (b[k] as number) + (c[k] as number)) / 2;
      const both = fround((a[k + 1] as number) + (b[k + 1] as number) + (c[k + 1] as number));
      const y = fround((a[k + 2] as number) + (b[k + 2] as number) + (c[k + 2] as number)) / 2;
      const apart = fround(x - y);
      const root = fround(Math.sqrt(fround(fround(apart * apart) + fround(both * both))));
      strengths[at] = fround(x + y) - root;
    }
  }
  return strengths;
}

/** Mirrored, a slope has turned round; of products, as of all that is summed up, the mirror image itself is wanted. */
function mirrorProducts(products: Float32Array, widthPx: number, isBeyond: boolean): void {
  for (const column of [1, widthPx - 2]) turnRound(products, column);
  if (isBeyond) for (let column = 1; column < widthPx - 1; column++) turnRound(products, column);
}

function turnRound(products: Float32Array, column: number): void {
  products[3 * column + 1] = -(products[3 * column + 1] as number);
}

/** Where no neighbour is stronger. */
function peaksOver(least: number, strengths: Float32Array, widthPx: number, heightPx: number): number[] {
  const peaks: number[] = [];
  for (let row = RIM; row < heightPx - RIM; row++)
    for (let column = RIM, at = row * widthPx + RIM; column < widthPx - RIM; column++, at++) {
      const own = strengths[at] as number;
      if (
        own > least &&
        own >= (strengths[at - 1] as number) &&
        own >= (strengths[at + 1] as number) &&
        own >= strongestOfThree(strengths, at - widthPx) &&
        own >= strongestOfThree(strengths, at + widthPx)
      )
        peaks.push(at);
    }
  return peaks;
}

const strongestOfThree = (strengths: Float32Array, middle: number) =>
  Math.max(strengths[middle - 1] as number, strengths[middle] as number, strengths[middle + 1] as number);

/** All pixels nearer than that to one. */
function cover(
  covered: Uint8Array,
  { widthPx, heightPx }: Gray,
  column: number,
  row: number,
  apartPx: number,
): void {
  const reach = Math.ceil(apartPx) - 1;
  for (let y = Math.max(0, row - reach); y <= Math.min(heightPx - 1, row + reach); y++)
    for (let x = Math.max(0, column - reach); x <= Math.min(widthPx - 1, column + reach); x++)
      if ((x - column) ** 2 + (y - row) ** 2 < apartPx * apartPx) covered[y * widthPx + x] = 1;
}
