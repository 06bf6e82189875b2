/**
 * A band's two rims as circles about one axis from where a grid found them, led up to where slopes of brightness follow them best.
 *
 * Model    score: of both rims, along pieces of the outline the mean of how far the slope goes along the normal, regardless of its sign; the
 *          mean over the pieces; times the root of the size: near its vertex an arc is also followed by smaller, less open ones, and the
 *          right one is followed the farthest. Steps in place, size, openness and turn, halved; one of size and openness together,
 *          that keeps the vertex and the curve there
 */
import { type Ring, ringAt, tiltFor } from './coaxial.ts';
import { type BandPlace, type Chamber, WIDTH } from './find-bands.ts';
import type { Coaxial } from './fit-coaxial.ts';
import type { Point } from './point.ts';
import type { Slopes } from './slopes.ts';

/** What is known of the camera. */
export type Lens = { readonly middle: Point; readonly focalPx: number };
export type Climbed = { readonly coaxial: Coaxial; readonly score: number };

const PIECES = 11;
const PER_PIECE = 5;
const END_RAD = 1.4;
const OPEN = [0.05, 0.8] as const;
const SMALLEST = 0.1;
const ROUNDS = 2;

export function climbBand(slopes: Slopes, chamber: Chamber, lens: Lens, start: BandPlace): Climbed {
  const scoreOf = (place: BandPlace) =>
    isPossible(place) ? bothScores(slopes, coaxialOf(chamber, lens, place)) * Math.sqrt(place.long) : 0;
  let [place, score] = [start, scoreOf(start)];
  for (let size = 1; size > SMALLEST; size /= 2)
    for (let round = 0; round < ROUNDS; round++)
      for (const sign of [1, -1])
        for (const move of MOVES) {
          const tried = move(place, sign * size);
          const there = scoreOf(tried);
          if (there > score) [place, score] = [tried, there];
        }
  return { coaxial: coaxialOf(chamber, lens, place), score };
}

const widthOf = ({ other, long, ratio }: BandPlace) => other / (long * Math.sqrt(1 - ratio * ratio));

function isPossible(place: BandPlace): boolean {
  if (place.ratio < OPEN[0] || place.ratio > OPEN[1]) return false;
  const width = widthOf(place);
  return width > 0.9 * WIDTH[0] && width < 1.06 * WIDTH[1];
}

const MOVES: readonly ((place: BandPlace, by: number) => BandPlace)[] = [
  (place, by) => ({ ...place, vertex: place.vertex + 0.012 * by }),
  (place, by) => ({ ...place, aside: place.aside + 0.02 * by }),
  (place, by) => ({ ...place, turnRad: place.turnRad + 0.03 * by }),
  (place, by) => ({ ...place, ratio: place.ratio + 0.03 * by }),
  (place, by) => ({ ...place, long: place.long * (1 + 0.03 * by) }),
  (place, by) => ({
    ...place,
    long: place.long * (1 + 0.06 * by),
    ratio: place.ratio * (1 + 0.06 * by),
  }),
  (place, by) => ({ ...place, other: place.other + 0.012 * by }),
];

function coaxialOf(
  { facePx, backRad, lengthPx }: Chamber,
  { middle, focalPx }: Lens,
  place: BandPlace,
): Coaxial {
  const { vertex, aside, long, ratio } = place;
  const [c, s] = [Math.cos(backRad), Math.sin(backRad)];
  const turnRad = backRad + place.turnRad;
  const radius = long * lengthPx;
  const foot: Point = [
    facePx[0] + lengthPx * (c * vertex - s * aside) - ratio * radius * Math.cos(turnRad) - middle[0],
    facePx[1] + lengthPx * (s * vertex + c * aside) - ratio * radius * Math.sin(turnRad) - middle[1],
  ];
  const tiltRad = tiltFor({ foot, focalPx, turnRad }, ratio);
  const behind = widthOf(place) * radius;
  return {
    axis: { middle, focalPx, foot, turnRad, tiltRad },
    rings: [
      { behind: 0, radius },
      { behind, radius },
    ],
  };
}

const bothScores = (slopes: Slopes, { axis, rings }: Coaxial): number =>
  ringScore(slopes, axis, rings[0]) + ringScore(slopes, axis, rings[1]);

export function ringScore(slopes: Slopes, axis: Coaxial['axis'], ring: Ring): number {
  const { left, top, columns, rows, grain, across, down } = slopes;
  let total = 0;
  let piece = 0;
  for (let i = 0; i < PIECES * PER_PIECE; i++) {
    const w = END_RAD * ((2 * (i + 0.5)) / (PIECES * PER_PIECE) - 1);
    const { at, normal } = ringAt(axis, ring, w);
    const column = Math.floor((at[0] - left) / grain);
    const row = Math.floor((at[1] - top) / grain);
    if (column >= 0 && row >= 0 && column < columns && row < rows) {
      const here = row * columns + column;
      piece += normal[0] * (across[here] as number) + normal[1] * (down[here] as number);
    }
    if (i % PER_PIECE === PER_PIECE - 1) {
      total += Math.abs(piece) / PER_PIECE;
      piece = 0;
    }
  }
  return total / PIECES;
}
