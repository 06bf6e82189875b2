/**
 * Arcs about a chamber that could be rims of it: near halves of circles square to the rod, bulging away from the pin.
 *
 * Model    score of an arc: it is cut into PIECES; of each, the mean of how far the slope of brightness goes along the normal (slopes.ts),
 *          regardless of its sign; the mean over the pieces. Pieces may differ in sign: what is brighter, the band or what lies
 *          beside it, changes along a rim. Search on a grid about the line from the pin through the face, then by small steps
 * Assumes  a view from the side or from the rod's side; the whole chamber about a length from face to pin wide
 * Fails    an empty list where nothing scores
 */
import type { Arc } from './arc.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';
import { type Slopes, slopesIn } from './slopes.ts';

/** All over the length from face to pin. vertex: how far behind the face. */
type Shape = {
  readonly vertex: number;
  readonly aside: number;
  readonly long: number;
  readonly ratio: number;
  readonly turnRad: number;
};
type Chamber = { readonly facePx: Point; readonly backRad: number; readonly lengthPx: number };

const PIECES = 11;
const PER_PIECE = 5;
const END_RAD = 1.4;
/** Levels of 255. */
const FAINT = 2.5;
const LEAST_SCORE = 0.2;
const MOST_ARCS = 30;
const GRID = {
  long: Array.from({ length: 9 }, (_, i) => 0.42 * 1.125 ** i),
  ratio: Array.from({ length: 16 }, (_, i) => 0.08 + 0.042 * i),
  turnRad: [-0.15, -0.1, -0.05, 0, 0.05, 0.1, 0.15],
  aside: [-0.09, 0, 0.09],
} as const;
const VERTEX = [0.2, 1.25] as const;

export function chamberSlopes(gray: Gray, facePx: Point, pinPx: Point): Slopes | null {
  const { backRad, lengthPx } = chamberOf(facePx, pinPx);
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

function chamberOf(facePx: Point, pinPx: Point): Chamber {
  const [dx, dy] = [facePx[0] - pinPx[0], facePx[1] - pinPx[1]];
  return { facePx, lengthPx: Math.hypot(dx, dy), backRad: Math.atan2(dy, dx) };
}

export function findArcs(slopes: Slopes, facePx: Point, pinPx: Point): readonly Arc[] {
  const chamber = chamberOf(facePx, pinPx);
  const rough = onGrid(slopes, chamber);
  const better = rough.map(({ shape }) => climbed(slopes, chamber, shape));
  const kept: { shape: Shape; score: number }[] = [];
  for (const each of better.sort((a, b) => b.score - a.score)) {
    if (kept.length >= MOST_ARCS) break;
    if (each.score < LEAST_SCORE || kept.some(({ shape }) => isSame(shape, each.shape))) continue;
    kept.push(each);
  }
  return kept.map(({ shape }) => arcOf(shape, chamber));
}

const isSame = (a: Shape, b: Shape) =>
  Math.abs(a.vertex - b.vertex) < 0.015 && Math.abs(a.long - b.long) < 0.06;

function arcOf({ vertex, aside, long, ratio, turnRad }: Shape, { facePx, backRad, lengthPx }: Chamber): Arc {
  const [c, s] = [Math.cos(backRad), Math.sin(backRad)];
  const [longPx, shortPx] = [long * lengthPx, ratio * long * lengthPx];
  const turned = backRad + turnRad;
  const [u, v] = [vertex * lengthPx, aside * lengthPx];
  return {
    centre: [
      facePx[0] + c * u - s * v - shortPx * Math.cos(turned),
      facePx[1] + s * u + c * v - shortPx * Math.sin(turned),
    ],
    longPx,
    shortPx,
    turnRad: turned,
  };
}

const SAMPLES = Array.from({ length: PIECES * PER_PIECE }, (_, i) => {
  const w = END_RAD * ((2 * (i + 0.5)) / (PIECES * PER_PIECE) - 1);
  return { cos: Math.cos(w), sin: Math.sin(w) };
});

export function arcScore(slopes: Slopes, { centre, longPx, shortPx, turnRad }: Arc): number {
  const { left, top, columns, rows, grain, across, down } = slopes;
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  let total = 0;
  let piece = 0;
  for (let i = 0; i < SAMPLES.length; i++) {
    const { cos, sin } = SAMPLES[i] as { cos: number; sin: number };
    const [u, v] = [shortPx * cos, longPx * sin];
    const column = Math.floor((centre[0] + c * u - s * v - left) / grain);
    const row = Math.floor((centre[1] + s * u + c * v - top) / grain);
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

function onGrid(slopes: Slopes, chamber: Chamber) {
  const step = (2 * slopes.grain) / chamber.lengthPx;
  const steps = Math.ceil((VERTEX[1] - VERTEX[0]) / step);
  /** By where the vertex lies and how long it is: the best of each. */
  const best = new Map<number, { readonly shape: Shape; readonly score: number }>();
  for (const [li, long] of GRID.long.entries())
    for (const ratio of GRID.ratio)
      for (const turnRad of GRID.turnRad)
        for (const aside of GRID.aside)
          for (let vi = 0; vi < steps; vi++) {
            const shape = { vertex: VERTEX[0] + step * vi, aside, long, ratio, turnRad };
            const score = arcScore(slopes, arcOf(shape, chamber));
            const key = Math.floor(vi / 2) * 100 + li;
            const before = best.get(key);
            if (!before || score > before.score) best.set(key, { shape, score });
          }
  return [...best.values()].sort((a, b) => b.score - a.score).slice(0, 120);
}

function climbed(slopes: Slopes, chamber: Chamber, start: Shape) {
  let shape = start;
  let score = arcScore(slopes, arcOf(shape, chamber));
  for (let size = 1; size > 0.2; size /= 2)
    for (let round = 0; round < 3; round++)
      for (const [name, step] of STEPS)
        for (const sign of [1, -1]) {
          const tried = { ...shape, [name]: shape[name] + sign * size * step };
          if (tried.ratio < 0.05 || tried.ratio > 0.8) continue;
          const there = arcScore(slopes, arcOf(tried, chamber));
          if (there > score) [shape, score] = [tried, there];
        }
  return { shape, score };
}

const STEPS = [
  ['vertex', 0.012],
  ['long', 0.03],
  ['ratio', 0.03],
  ['turnRad', 0.03],
  ['aside', 0.03],
] as const;
