/**
 * Where along the push rod a band of paint may end: candidates for its outer edge, each with how far it reaches back.
 *
 * Model    loudness: a place's paintness, more where red is brighter than usual along this line of the rod
 *          a ring's edge shows as an arc, even about the rod's middle: at a place t across it lies bow (1 - sqrt(1 - t^2)) farther out;
 *          for every column and bow the loudness falls by the mean over CORE of what the STEP before exceeds that after, each within FALL;
 *          the columns where that is greatest about are the candidates
 *          where the colour changes most evenly, whatever the colours (paint-colour-ends)
 *          the loudest stretch over an even level is a candidate too: worn edges fall nowhere at once
 *          back from there as far as columns are louder, or have gone farther the way of the change, in sum, than halfway between the two
 *          sides of the edge
 * Assumes  a band's outer edge is in view; paint is louder than what lies outside it
 */
import type { ColourSums } from './paint-colour-edge.ts';
import { colourEnds } from './paint-colour-ends.ts';
import { type BandColour, paintness } from './paint-hues.ts';
import { CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { fallAt, meanOf as mean, median } from './paint-numbers.ts';
import { brighterBy, type PaintTerms, paintTerms, usualRed } from './paint-odds.ts';
import { alongOf, cellsOf, columnOf, type Strip } from './paint-strip.ts';
import { PLACE_WEIGHTS } from './paint-weights.ts';

/** By place across, then by column; NaN where the picture ends. */
export type Loudness = readonly (readonly number[])[];

export type BandEnds = {
  /** Columns of the strip, the second at the rod's middle. */
  readonly from: number;
  readonly to: number;
  /** Columns by which the arc bends out, for each place across. */
  readonly bend: readonly number[];
  /** Mean fall of the loudness over the edge. */
  readonly fall: number;
  /** Halfway between both sides of it. */
  readonly level: number;
};

/** Paint is brighter than what it lies on, rust darker; more than this would let shine and shadow decide. */
const BRIGHT = 0.2;
const MOST_ODDS = 6;
const BOWS_MM = [-1.5, 0, 1.5, 3, 4.5, 6];
const FALL: readonly [number, number] = [-0.4, 0.7];
const STEP_MM = 2;
/** What ends nearer to the face may be the face's own. */
const ENDS_MM: readonly [number, number] = [1.2, 46];
const APART_MM = 1.5;
const LEAST_FALL = 0.04;
const MOST = 6;
const LEAST_MM = 1;
const LEVELS = [-0.2, 0, 0.25];
const BEFORE_MM = -4;

export function loudnessOf(strip: Strip, map: PaintMap, colour: BandColour): Loudness {
  if (colour === 'red or orange') return redLoudness(paintTerms(strip, map), PLACE_WEIGHTS);
  return map.core.map((line) => {
    const usual = usualRed(strip, line);
    return line.map((cell) => (cell ? loud(colour, cell, usual) : Number.NaN));
  });
}

/** Odds as far as they tell anything, in a size like that of a paintness. */
export const redLoudness = (terms: PaintTerms, weights: readonly number[]): Loudness =>
  terms.map((line) =>
    line.map((place) => {
      if (!place) return Number.NaN;
      let odds = 0;
      for (let i = 0; i < place.length; i += 1) odds += (place[i] as number) * (weights[i] ?? 0);
      return Math.min(MOST_ODDS, Math.max(-MOST_ODDS, odds)) / MOST_ODDS;
    }),
  );

function loud(colour: BandColour, { hue, red }: PaintCell, usual: number): number {
  return paintness(colour, hue) + BRIGHT * Math.min(1, Math.max(-1, brighterBy(red, usual)));
}

/** sums: null where changes of colour alone are no candidates. */
export function bandEnds(
  strip: Strip,
  map: PaintMap,
  loudness: Loudness,
  sums: ColourSums | null,
): readonly BandEnds[] {
  const reach = Math.max(2, Math.round(STEP_MM / strip.stepMm));
  const falls = loudness.map((line) => fallsAlong(line, reach));
  const bends = BOWS_MM.map((bowMm) =>
    CORE.map((across) => Math.round((bowMm * (1 - Math.sqrt(1 - across * across))) / strip.stepMm)),
  );
  const [first, last] = [columnOf(strip, ENDS_MM[0]), columnOf(strip, ENDS_MM[1])];
  const found: { to: number; bend: readonly number[]; fall: number }[] = [];
  for (let to = first; to <= Math.min(last, strip.columns - reach); to += 1) {
    let best = { to, bend: bends[0] as readonly number[], fall: Number.NEGATIVE_INFINITY };
    for (const bend of bends) {
      const fall = mean(falls.map((line, row) => line[to + (bend[row] ?? 0)] ?? Number.NaN));
      if (fall > best.fall) best = { to, bend, fall };
    }
    found.push(best);
  }
  const apart = Math.max(1, Math.round(APART_MM / strip.stepMm));
  const byFall = found
    .filter(
      ({ fall }, i) =>
        fall > LEAST_FALL &&
        found.slice(Math.max(0, i - apart), i).every((other) => other.fall < fall) &&
        found.slice(i + 1, i + apart + 1).every((other) => other.fall <= fall),
    )
    .sort((a, b) => b.fall - a.fall)
    .slice(0, MOST)
    .concat(...LEVELS.flatMap((level) => loudestEnd(strip, loudness, level) ?? []));
  const byColour = (sums ? colourEnds(strip, map, sums, bends, ENDS_MM, apart) : []).map((end) => ({
    ...end,
    fall: mean(falls.map((line, row) => line[end.to + (end.bend[row] ?? 0)] ?? Number.NaN)),
  }));
  return [
    ...byFall.map((end) => reachedBack(strip, loudness, end, loudness)),
    ...byColour.map((end) => reachedBack(strip, loudness, end, end.alongChange)),
  ]
    .filter(({ from, to }) => (to - from) * strip.stepMm >= LEAST_MM)
    .filter(({ to }, i, all) => all.findIndex((other) => Math.abs(other.to - to) * strip.stepMm < 1) === i);
}

/** Of the stretch with the greatest sum of loudness over the level. */
function loudestEnd(strip: Strip, loudness: Loudness, level: number) {
  let [best, sum, to] = [0, 0, 0];
  const [first, last] = [columnOf(strip, BEFORE_MM), columnOf(strip, ENDS_MM[1])];
  for (let column = first; column < Math.min(last, strip.columns); column += 1) {
    const value = mean(loudness.map((line) => line[column] ?? Number.NaN)) - level;
    sum = Math.max(0, sum + (Number.isNaN(value) ? 0 : value));
    if (sum > best) [best, to] = [sum, column + 1];
  }
  return to < columnOf(strip, ENDS_MM[0]) ? null : { to, bend: CORE.map(() => 0), fall: 0 };
}

function fallsAlong(line: readonly number[], reach: number): readonly number[] {
  return line.map((_, column) => Math.min(FALL[1], Math.max(FALL[0], fallAt(line, column, reach))));
}

function reachedBack(
  strip: Strip,
  loudness: Loudness,
  { to, bend, fall }: Pick<BandEnds, 'to' | 'bend' | 'fall'>,
  lines: readonly (readonly number[])[],
): BandEnds {
  const along = halfway(strip, lines, to, bend);
  let [best, sum, from] = [0, 0, to - 1];
  for (let column = to - 1; alongOf(strip, column) > BEFORE_MM; column -= 1) {
    const value = mean(lines.map((line, row) => line[column + (bend[row] ?? 0)] ?? Number.NaN));
    if (!Number.isNaN(value)) sum += Math.min(0.25, Math.max(-0.25, value - along));
    if (sum > best) [best, from] = [sum, column];
  }
  return { from, to, bend, fall, level: lines === loudness ? along : halfway(strip, loudness, to, bend) };
}

/** Between the medians of both sides of the edge. */
function halfway(
  strip: Strip,
  lines: readonly (readonly number[])[],
  to: number,
  bend: readonly number[],
): number {
  const cells = cellsOf(strip);
  const side = (from: number, end: number) =>
    median(
      lines.flatMap((line, row) =>
        line
          .slice(Math.max(0, from + (bend[row] ?? 0)), end + (bend[row] ?? 0))
          .filter((value) => !Number.isNaN(value)),
      ),
    );
  return (side(to - cells(3), to - cells(0.4)) + side(to + cells(0.4), to + cells(3))) / 2;
}
