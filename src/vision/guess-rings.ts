/**
 * Where round things may be in a part of a picture, by a sheet laid over it.
 *
 * Model    each edge of the sheet votes for middles along its gradient, both ways, at every radius; a place's votes, over its circumference and
 *          softened, by radius; the best that lie apart
 * Assumes  a sheet with about a millimetre for each step
 * Fails    an empty list
 */
import type { Point } from './point.ts';

export type Sheet = {
  readonly columns: number;
  readonly rows: number;
  readonly levels: Float64Array;
};
/** Column and row of its middle, radius in steps. */
export type RingPlace = { readonly at: Point; readonly radius: number; readonly votes: number };

const LEAST_SLOPE = 6;
const FULL_SLOPE = 24;
/** Over the circumference: less is chance. */
const LEAST_VOTES = 0.2;

export function ringPlaces(
  { columns, rows, levels }: Sheet,
  radii: readonly number[],
  most: number,
): readonly RingPlace[] {
  const found: RingPlace[] = [];
  const edges = edgesOf({ columns, rows, levels });
  for (const radius of radii) {
    const votes = new Float64Array(columns * rows);
    for (const { x, y, nx, ny, weight } of edges)
      for (const side of [radius, -radius]) {
        const [c, r] = [Math.round(x + side * nx), Math.round(y + side * ny)];
        if (c < 0 || r < 0 || c >= columns || r >= rows) continue;
        votes[r * columns + c] = (votes[r * columns + c] as number) + weight;
      }
    const soft = new Float64Array(columns * rows);
    for (let r = 1; r < rows - 1; r++)
      for (let c = 1; c < columns - 1; c++) {
        let sum = 0;
        for (let j = -1; j <= 1; j++)
          for (let i = -1; i <= 1; i++) sum += votes[(r + j) * columns + c + i] as number;
        soft[r * columns + c] = sum / (2 * Math.PI * radius);
      }
    for (let r = 2; r < rows - 2; r++)
      for (let c = 2; c < columns - 2; c++) {
        const at = r * columns + c;
        const here = soft[at] as number;
        const isPeak = [1, -1, columns, -columns].every((off) => here >= (soft[at + off] as number));
        if (here > LEAST_VOTES && isPeak) found.push({ at: [c, r], radius, votes: here });
      }
  }
  found.sort((a, b) => b.votes - a.votes);
  const kept: RingPlace[] = [];
  for (const place of found) {
    if (kept.length >= most) break;
    if (kept.every((other) => Math.hypot(other.at[0] - place.at[0], other.at[1] - place.at[1]) > 4))
      kept.push(place);
  }
  return kept;
}

function edgesOf({ columns, rows, levels }: Sheet) {
  const edges: { x: number; y: number; nx: number; ny: number; weight: number }[] = [];
  for (let r = 1; r < rows - 1; r++)
    for (let c = 1; c < columns - 1; c++) {
      const at = r * columns + c;
      const dx = ((levels[at + 1] as number) - (levels[at - 1] as number)) / 2;
      const dy = ((levels[at + columns] as number) - (levels[at - columns] as number)) / 2;
      const size = Math.hypot(dx, dy);
      if (size < LEAST_SLOPE) continue;
      edges.push({ x: c, y: r, nx: dx / size, ny: dy / size, weight: Math.min(1, size / FULL_SLOPE) });
    }
  return edges;
}
