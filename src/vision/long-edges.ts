/**
 * Long straight edges of a small picture.
 *
 * Model    Hough: each edge pixel votes for lines square to its gradient, some degrees to either side, n . x = rho with n towards the
 *          brighter side; each line that many vote for is fitted to the pixels about it; of those on it the longest run without a gap
 *          above GAP
 * Assumes  a picture of about a thousand pixels across
 * Fails    an empty list
 */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';

/** inward: unit vector to the brighter side. */
export type LongEdge = { readonly from: Point; readonly to: Point; readonly inward: Point };

/** Levels of 255, over two pixels. */
const LEAST_RISE = 14;
const WAYS = 180;
const RHO_PX = 2;
/** Steps of the way to either side. */
const SPREAD = 2;
const GAP = 20;
const ON_PX = 1.3;
const MOST_LINES = 60;

type EdgePixel = { readonly x: number; readonly y: number; readonly way: number };

export function longEdges(gray: Gray, leastPx: number): readonly LongEdge[] {
  const pixels = edgePixels(gray);
  const reach = Math.ceil(Math.hypot(gray.widthPx, gray.heightPx));
  const rhos = Math.ceil((2 * reach + 1) / RHO_PX);
  const votes = new Uint16Array(WAYS * rhos);
  for (const { x, y, way } of pixels)
    for (let k = -SPREAD; k <= SPREAD; k++) {
      const w = (way + k + WAYS) % WAYS;
      const rho = x * (COS[w] as number) + y * (SIN[w] as number);
      const at = w * rhos + Math.floor((rho + reach) / RHO_PX);
      votes[at] = (votes[at] as number) + 1;
    }
  const places: number[] = [];
  for (let at = 0; at < votes.length; at++)
    if ((votes[at] as number) >= 0.5 * leastPx && isPeak(votes, at, rhos)) places.push(at);
  places.sort((a, b) => (votes[b] as number) - (votes[a] as number));
  const byWay = Array.from({ length: WAYS }, (): EdgePixel[] => []);
  for (const pixel of pixels) byWay[pixel.way]?.push(pixel);
  const edges: LongEdge[] = [];
  for (const at of places) {
    if (edges.length >= MOST_LINES) break;
    const [way, rho] = [Math.floor(at / rhos), ((at % rhos) + 0.5) * RHO_PX - reach];
    const edge = runOn(byWay, way, rho, leastPx);
    if (edge && !edges.some((other) => isSame(edge, other))) edges.push(edge);
  }
  return edges;
}

const COS = Array.from({ length: WAYS }, (_, i) => Math.cos((2 * Math.PI * i) / WAYS));
const SIN = Array.from({ length: WAYS }, (_, i) => Math.sin((2 * Math.PI * i) / WAYS));

function edgePixels({ widthPx, heightPx, values }: Gray): EdgePixel[] {
  const pixels: EdgePixel[] = [];
  const at = (i: number) => values[i] as number;
  for (let y = 1; y < heightPx - 1; y++)
    for (let x = 1; x < widthPx - 1; x++) {
      const i = y * widthPx + x;
      const dx = at(i + 1) - at(i - 1);
      const dy = at(i + widthPx) - at(i - widthPx);
      const size = Math.hypot(dx, dy);
      if (size < LEAST_RISE) continue;
      // Only where it is steepest across.
      const step = Math.abs(dx) > Math.abs(dy) ? 1 : widthPx;
      const slope = (j: number) =>
        step === 1 ? Math.abs(at(j + 1) - at(j - 1)) : Math.abs(at(j + widthPx) - at(j - widthPx));
      if (x < 2 || y < 2 || x > widthPx - 3 || y > heightPx - 3) continue;
      if (slope(i) < slope(i - step) || slope(i) <= slope(i + step)) continue;
      const way = Math.round((Math.atan2(dy, dx) / (2 * Math.PI)) * WAYS + WAYS) % WAYS;
      pixels.push({ x: x + 0.5, y: y + 0.5, way });
    }
  return pixels;
}

function isPeak(votes: Uint16Array, at: number, rhos: number): boolean {
  const here = votes[at] as number;
  for (let w = -1; w <= 1; w++)
    for (let r = -2; r <= 2; r++) {
      const there = votes[(at + w * rhos + r + votes.length) % votes.length] as number;
      if (there > here || (there === here && (w < 0 || (w === 0 && r < 0)))) return false;
    }
  return true;
}

function runOn(
  byWay: readonly (readonly EdgePixel[])[],
  way: number,
  rho: number,
  leastPx: number,
): LongEdge | null {
  const alike = Array.from(
    { length: 2 * SPREAD + 3 },
    (_, k) => byWay[(way + k - SPREAD - 1 + WAYS) % WAYS] ?? [],
  ).flat();
  let n: Point = [COS[way] as number, SIN[way] as number];
  let r = rho;
  for (const widthPx of [4, 2.5, 1.5]) {
    const near = alike.filter(({ x, y }) => Math.abs(x * n[0] + y * n[1] - r) < widthPx);
    if (near.length < 0.4 * leastPx) return null;
    [n, r] = straight(near, n);
  }
  const along: Point = [-n[1], n[0]];
  const on = alike
    .filter(({ x, y }) => Math.abs(x * n[0] + y * n[1] - r) < ON_PX)
    .map(({ x, y }) => x * along[0] + y * along[1])
    .sort((a, b) => a - b);
  let [best, bestLength, begin] = [[0, 0] as const as readonly [number, number], 0, on[0] ?? 0];
  for (const [i, s] of on.entries()) {
    const before = on[i - 1];
    if (before !== undefined && s - before > GAP) begin = s;
    if (s - begin > bestLength) [best, bestLength] = [[begin, s], s - begin];
  }
  if (bestLength < leastPx) return null;
  const placeAt = (s: number): Point => [r * n[0] + s * along[0], r * n[1] + s * along[1]];
  return { from: placeAt(best[0]), to: placeAt(best[1]), inward: n };
}

/** Least squares across the line; the normal keeps its side. */
function straight(pixels: readonly EdgePixel[], n: Point): readonly [Point, number] {
  const mean = (of: (pixel: EdgePixel) => number) =>
    pixels.reduce((sum, pixel) => sum + of(pixel), 0) / pixels.length;
  const [mx, my] = [mean(({ x }) => x), mean(({ y }) => y)];
  const [xx, xy, yy] = [
    mean(({ x }) => (x - mx) ** 2),
    mean(({ x, y }) => (x - mx) * (y - my)),
    mean(({ y }) => (y - my) ** 2),
  ];
  const way = Math.atan2(2 * xy, xx - yy) / 2;
  const side = Math.sign(-Math.sin(way) * n[0] + Math.cos(way) * n[1]) || 1;
  const normal: Point = [-Math.sin(way) * side, Math.cos(way) * side];
  return [normal, mx * normal[0] + my * normal[1]];
}

function isSame(a: LongEdge, b: LongEdge): boolean {
  if (a.inward[0] * b.inward[0] + a.inward[1] * b.inward[1] < 0.99) return false;
  const off = ([x, y]: Point) => Math.abs((x - b.from[0]) * b.inward[0] + (y - b.from[1]) * b.inward[1]);
  const length = Math.hypot(b.to[0] - b.from[0], b.to[1] - b.from[1]);
  const along = ([x, y]: Point) =>
    ((x - b.from[0]) * (b.to[0] - b.from[0]) + (y - b.from[1]) * (b.to[1] - b.from[1])) / length;
  const [s, t] = [along(a.from), along(a.to)].sort((x, y) => x - y) as [number, number];
  return off(a.from) < 3 && off(a.to) < 3 && s > -0.2 * length && t < 1.2 * length;
}
