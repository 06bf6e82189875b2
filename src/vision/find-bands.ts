/**
 * Where a clamp band could be about the chamber that face and pin point to: its rim towards the rod, its other rim, where its flank ends.
 *
 * Model    score of an arc (near half of a circle square to the axis, bulging away from the pin): it is cut into PIECES; of each, the mean of
 *          how far the slope of brightness goes along the normal (slopes.ts), regardless of its sign; the mean over the pieces: what is
 *          brighter, the band or what lies beside it, changes along a rim. All arcs on a grid about the line from the pin through the
 *          face; a band's score is that of an arc, the best of those alike large a band's width behind it, and the best of the smaller
 *          ones before it, times the root of its size: small arcs are followed easily
 * Assumes  a view from the side or from the rod's side; the whole chamber about a length from face to pin wide
 * Fails    an empty list where nothing scores
 */
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';
import { type Slopes, slopesIn } from './slopes.ts';

/** Of the rim, all over the length from face to pin. vertex: how far behind the face; other, flank: how much farther theirs. */
export type BandPlace = {
  readonly vertex: number;
  readonly aside: number;
  readonly long: number;
  readonly ratio: number;
  readonly turnRad: number;
  readonly other: number;
  readonly flank: number;
  readonly score: number;
};
export type Chamber = { readonly facePx: Point; readonly backRad: number; readonly lengthPx: number };

const PIECES = 11;
const PER_PIECE = 3;
const END_RAD = 1.4;
/** Levels of 255. */
const FAINT = 2.5;
const LEAST_SCORE = 0.5;
const MOST = 70;
/** Of long from one to the next: a flank ends about one of them smaller. */
const GROWTH = 1.1;
const LONG = Array.from({ length: 12 }, (_, i) => 0.38 * GROWTH ** i);
const RATIO = Array.from({ length: 16 }, (_, i) => 0.08 + 0.042 * i);
const TURN_RAD = [-0.15, -0.1, -0.05, 0, 0.05, 0.1, 0.15];
const ASIDE = [-0.09, 0, 0.09];
const VERTEX = [0.1, 1.3] as const;
export const WIDTH = [0.1, 0.34] as const;
const FLANK_WORTH = 0.6;

export function chamberOf(facePx: Point, pinPx: Point): Chamber {
  const [dx, dy] = [facePx[0] - pinPx[0], facePx[1] - pinPx[1]];
  return { facePx, lengthPx: Math.hypot(dx, dy), backRad: Math.atan2(dy, dx) };
}

export function chamberSlopes(gray: Gray, { facePx, backRad, lengthPx }: Chamber): Slopes | null {
  const [c, s] = [Math.cos(backRad), Math.sin(backRad)];
  const middle: Point = [facePx[0] + 0.55 * lengthPx * c, facePx[1] + 0.55 * lengthPx * s];
  const reach = 1.25 * lengthPx;
  return slopesIn(
    gray,
    [middle[0] - reach, middle[1] - reach],
    [middle[0] + reach, middle[1] + reach],
    Math.max(1, Math.round(lengthPx / 130)),
    FAINT,
  );
}

export function findBands(slopes: Slopes, chamber: Chamber): readonly BandPlace[] {
  const step = (2 * slopes.grain) / chamber.lengthPx;
  const count = Math.ceil((VERTEX[1] - VERTEX[0]) / step);
  const best = new Map<number, BandPlace>();
  for (const ratio of RATIO)
    for (const turnRad of TURN_RAD)
      for (const aside of ASIDE) {
        let smaller: Float32Array | null = null;
        for (const [li, long] of LONG.entries()) {
          const scores = new Float32Array(count);
          for (let vi = 0; vi < count; vi++)
            scores[vi] = scoreAt(slopes, chamber, VERTEX[0] + step * vi, aside, long, ratio, turnRad);
          const seen = Math.sqrt(1 - ratio * ratio) * long;
          const [near, far] = WIDTH.map((behind) => Math.round((behind * seen) / step)) as [number, number];
          const [before, after] = [0.13 * seen + 0.13 * ratio * long, 0.05 * ratio * long].map((back) =>
            Math.round(back / step),
          ) as [number, number];
          for (let vi = 0; vi < count; vi++) {
            const other = bestOf(scores, vi + near, vi + far);
            const flank = smaller ? bestOf(smaller, vi - before, vi - after) : null;
            const all = (scores[vi] as number) + (other?.score ?? 0) + FLANK_WORTH * (flank?.score ?? 0);
            const score = all * Math.sqrt(long);
            const key = Math.floor(vi / 3) * 100 + li;
            if (all < LEAST_SCORE || score < (best.get(key)?.score ?? 0)) continue;
            best.set(key, {
              vertex: VERTEX[0] + step * vi,
              aside,
              long,
              ratio,
              turnRad,
              other: step * ((other?.at ?? vi + near) - vi),
              flank: step * ((flank?.at ?? vi - after) - vi),
              score,
            });
          }
          smaller = scores;
        }
      }
  return [...best.values()].sort((a, b) => b.score - a.score).slice(0, MOST);
}

function bestOf(scores: Float32Array, from: number, to: number) {
  let found: { readonly at: number; readonly score: number } | null = null;
  for (let at = Math.max(0, from); at <= Math.min(scores.length - 1, to); at++)
    if ((scores[at] as number) > (found?.score ?? 0)) found = { at, score: scores[at] as number };
  return found;
}

const ANGLES = Array.from({ length: PIECES * PER_PIECE }, (_, i) => {
  const w = END_RAD * ((2 * (i + 0.5)) / (PIECES * PER_PIECE) - 1);
  return { cos: Math.cos(w), sin: Math.sin(w) };
});

function scoreAt(
  { left, top, columns, rows, grain, across, down }: Slopes,
  { facePx, backRad, lengthPx }: Chamber,
  vertex: number,
  aside: number,
  long: number,
  ratio: number,
  turnRad: number,
): number {
  const [longPx, shortPx] = [long * lengthPx, ratio * long * lengthPx];
  const [bc, bs] = [Math.cos(backRad), Math.sin(backRad)];
  const [c, s] = [Math.cos(backRad + turnRad), Math.sin(backRad + turnRad)];
  const x = facePx[0] + lengthPx * (bc * vertex - bs * aside) - shortPx * c - left;
  const y = facePx[1] + lengthPx * (bs * vertex + bc * aside) - shortPx * s - top;
  let total = 0;
  let piece = 0;
  for (let i = 0; i < ANGLES.length; i++) {
    const { cos, sin } = ANGLES[i] as { cos: number; sin: number };
    const [u, v] = [shortPx * cos, longPx * sin];
    const column = Math.floor((x + c * u - s * v) / grain);
    const row = Math.floor((y + s * u + c * v) / grain);
    if (column >= 0 && row >= 0 && column < columns && row < rows) {
      const at = row * columns + column;
      const [nu, nv] = [longPx * cos, shortPx * sin];
      piece +=
        ((c * nu - s * nv) * (across[at] as number) + (s * nu + c * nv) * (down[at] as number)) /
        Math.sqrt(nu * nu + nv * nv);
    }
    if (i % PER_PIECE === PER_PIECE - 1) {
      total += Math.abs(piece) / PER_PIECE;
      piece = 0;
    }
  }
  return total / PIECES;
}
