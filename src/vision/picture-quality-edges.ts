/**
 * How sharp a picture is: the widths of its sharpest edges, by the way they face.
 *
 * Model    an edge after blur, in linear light, along its normal: a + b P((x - p) / w) with the normal distribution's P; w by
 *          Levenberg-Marquardt on the mean of rows side by side. Many edges of a scene are soft in themselves: of those that face one way the
 *          sharpest tenths tell the blur
 * Assumes  straight edges of a few pixels' length, brighter on one side
 * Fails    an empty list where nothing stands out
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import { blurredStep, stepSlope } from './blurred-step.ts';
import type { Gray } from './gray.ts';
import { isInPicture, levelAt } from './level-at.ts';
import { linearAt } from './linear-light.ts';
import type { Rect } from './rect.ts';

/** widthPx: standard deviation of the blur that the edge shows; facesRad: of its normal, 0 to pi. */
export type SeenEdge = { readonly widthPx: number; readonly facesRad: number };

/** Levels of 255 over four pixels: less is noise of a phone in shade. */
const LEAST_RISE = 24;
/** Cells along the longer side of the part looked at, one edge from each. */
const CELLS = 64;
const LEAST_CELL_PX = 12;
/** Rows beside each other, px: their mean takes noise off. */
const ROWS = [-2.5, -1.5, -0.5, 0.5, 1.5, 2.5];
const HALVES_PX = [8, 20];
const PER_PX = 2;
/** Of the step: what the model may leave over. */
const MOST_MISFIT = 0.06;
const UNKNOWNS = 4;

export function seenEdges(gray: Gray, box: Rect): readonly SeenEdge[] {
  const cellPx = Math.max(LEAST_CELL_PX, Math.ceil(Math.max(box.widthPx, box.heightPx) / CELLS));
  const edges: SeenEdge[] = [];
  for (let y = box.yPx; y < box.yPx + box.heightPx; y += cellPx)
    for (let x = box.xPx; x < box.xPx + box.widthPx; x += cellPx) {
      const place = steepest(gray, x, y, cellPx);
      const edge = place && edgeAt(gray, place);
      if (edge) edges.push(edge);
    }
  return edges;
}

type Steep = { readonly x: number; readonly y: number; readonly dx: number; readonly dy: number };

/** Differences over five pixels, rows and columns of three: noise does not win. */
function steepest({ widthPx, heightPx, values }: Gray, x0: number, y0: number, cellPx: number): Steep | null {
  let best: Steep | null = null;
  let most = LEAST_RISE ** 2;
  const at = (x: number, y: number) => values[y * widthPx + x] as number;
  for (let y = Math.max(4, y0); y < Math.min(heightPx - 4, y0 + cellPx); y++)
    for (let x = Math.max(4, x0); x < Math.min(widthPx - 4, x0 + cellPx); x++) {
      let [dx, dy] = [0, 0];
      for (let k = -1; k <= 1; k++) {
        dx += at(x + 2, y + k) - at(x - 2, y + k);
        dy += at(x + k, y + 2) - at(x + k, y - 2);
      }
      const size = (dx * dx + dy * dy) / 9;
      if (size > most) {
        most = size;
        best = { x: x + 0.5, y: y + 0.5, dx, dy };
      }
    }
  return best;
}

function edgeAt(gray: Gray, { x, y, dx, dy }: Steep): SeenEdge | null {
  const size = Math.hypot(dx, dy);
  const [nx, ny] = [dx / size, dy / size];
  for (const half of HALVES_PX) {
    const room = half + 3;
    if (!isInPicture(gray, x, y, room)) return null;
    const n = half * PER_PX;
    const light = Array.from({ length: 2 * n + 1 }, (_, i) => {
      const s = (i - n) / PER_PX;
      let sum = 0;
      for (const t of ROWS) sum += linearAt(levelAt(gray, x + s * nx - t * ny, y + s * ny + t * nx));
      return sum / ROWS.length;
    });
    const widthPx = widthOf(light, half);
    if (widthPx === 'wider') continue;
    if (widthPx === null) return null;
    return { widthPx, facesRad: (Math.atan2(ny, nx) + Math.PI) % Math.PI };
  }
  return null;
}

/** 'wider': not to be told within this window. */
function widthOf(light: readonly number[], half: number): number | 'wider' | null {
  const [first, last] = [light[0] as number, light.at(-1) as number];
  let [a, b, p, w] = [Math.min(first, last), last - first, 0, half / 6];
  if (b <= 0) return null;
  let damping = 1e-3;
  let cost = Number.POSITIVE_INFINITY;
  const costOf = (k: readonly number[]) =>
    light.reduce((sum, level, i) => {
      const t = (i / PER_PX - half - (k[2] as number)) / (k[3] as number);
      return sum + (level - (k[0] as number) - (k[1] as number) * blurredStep(t)) ** 2;
    }, 0);
  cost = costOf([a, b, p, w]);
  for (let round = 0; round < 30; round++) {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const right = new Float64Array(UNKNOWNS);
    for (const [i, level] of light.entries()) {
      const t = (i / PER_PX - half - p) / w;
      const slope = stepSlope(t);
      const row = [1, blurredStep(t), (-b * slope) / w, (-b * slope * t) / w];
      const left = level - a - b * (row[1] as number);
      for (let j = 0; j < UNKNOWNS; j++) {
        right[j] = (right[j] as number) + (row[j] as number) * left;
        for (let k = 0; k < UNKNOWNS; k++)
          normal[j * UNKNOWNS + k] =
            (normal[j * UNKNOWNS + k] as number) + (row[j] as number) * (row[k] as number);
      }
    }
    for (let j = 0; j < UNKNOWNS; j++)
      normal[j * UNKNOWNS + j] = (normal[j * UNKNOWNS + j] as number) * (1 + damping) + 1e-12;
    const lower = choleskyFactor(normal, UNKNOWNS);
    if (!lower) return null;
    const step = choleskySolve(lower, UNKNOWNS, right);
    const next = [a, b, p, w].map((value, i) => value + (step[i] as number));
    next[3] = Math.min(half, Math.max(0.15, next[3] as number));
    const nextCost = costOf(next);
    if (nextCost < cost) {
      const small = cost - nextCost < 1e-4 * cost;
      [a, b, p, w] = next as [number, number, number, number];
      cost = nextCost;
      damping /= 5;
      if (small) break;
    } else damping *= 5;
    if (damping > 1e4) break;
  }
  if (Math.abs(p) > 3) return null;
  if (w > 0.4 * half && half < Math.max(...HALVES_PX)) return 'wider';
  const misfit = Math.sqrt(cost / light.length) / Math.abs(b);
  return b > 0.01 && misfit < MOST_MISFIT ? w : null;
}
