/**
 * A band's two rims as circles about one axis from where a grid found them, led up to where slopes of brightness follow them best.
 *
 * Model    score: of both rims, along pieces of the outline the mean of how far the slope goes along the normal, regardless of its sign; the
 *          mean over the pieces; times the root of the size: near its vertex an arc is also followed by smaller, less open ones, and the
 *          right one is followed the farthest. Steps in place, size, openness and turn, halved; one of size and openness together,
 *          that keeps the vertex and the curve there. Of the best, larger and more open ones with the same vertex and curve start anew
 */
import { type Ring, ringAt } from './coaxial.ts';
import { type BandPlace, type Chamber, WIDTH } from './find-bands.ts';
import type { Coaxial } from './fit-coaxial.ts';
import { type Lens, ringsSeenAt } from './place-rings.ts';
import { apart } from './point.ts';
import type { Slopes } from './slopes.ts';

export type Climbed = { readonly place: BandPlace; readonly coaxial: Coaxial; readonly score: number };

const PIECES = 11;
const PER_PIECE = 5;
const END_RAD = 1.4;
const OPEN = [0.05, 0.8] as const;
const SMALLEST = 0.1;
const ROUNDS = 2;
/** Over half the diameter: vertices nearer than this start alike. */
const SAME_START = 0.012;
const SAME_SIZE = 0.02;
const STRETCHES = [1.15, 1.33, 1.54, 1.78, 2.05];
const MOST_STRETCHED = 12;

export function climbBand(slopes: Slopes, chamber: Chamber, lens: Lens, start: BandPlace): Climbed {
  const scoreOf = (place: BandPlace) =>
    isPossible(place) ? bothScores(slopes, ringsSeenAt(chamber, lens, place)) * Math.sqrt(place.long) : 0;
  let [place, score] = [start, scoreOf(start)];
  for (let size = 1; size > SMALLEST; size /= 2)
    for (let round = 0; round < ROUNDS; round++)
      for (const sign of [1, -1])
        for (const move of MOVES) {
          const tried = move(place, sign * size);
          const there = scoreOf(tried);
          if (there > score) [place, score] = [tried, there];
        }
  return { place, coaxial: ringsSeenAt(chamber, lens, place), score };
}

/** The best first, each place once. */
export function climbBands(
  slopes: Slopes,
  chamber: Chamber,
  lens: Lens,
  places: readonly BandPlace[],
): readonly Climbed[] {
  const first = distinct(places.map((place) => climbBand(slopes, chamber, lens, place)));
  const larger = first
    .slice(0, MOST_STRETCHED)
    .flatMap(({ place }) => STRETCHES.map((by) => stretchedPlace(place, by)))
    .filter(isPossible)
    .map((place) => climbBand(slopes, chamber, lens, place));
  return distinct([...first, ...larger]);
}

const stretchedPlace = (place: BandPlace, by: number): BandPlace => ({
  ...place,
  long: by * place.long,
  ratio: by * place.ratio,
});

function distinct(climbed: readonly Climbed[]): readonly Climbed[] {
  const sorted = [...climbed].sort((a, b) => b.score - a.score);
  return sorted.filter(
    ({ coaxial }, i) => !sorted.slice(0, i).some((better) => isSamePlace(better.coaxial, coaxial)),
  );
}

/** Both rims have their vertices there, and one size. */
function isSamePlace(a: Coaxial, b: Coaxial): boolean {
  const isNear = (which: 0 | 1) =>
    apart(ringAt(a.axis, a.rings[which], 0).at, ringAt(b.axis, b.rings[which], 0).at) <
    SAME_START * a.rings[0].radius;
  return isNear(0) && isNear(1) && Math.abs(a.rings[0].radius / b.rings[0].radius - 1) < SAME_SIZE;
}

/** About the band's width over half its diameter. */
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
