/**
 * The stretch of the push rod that looks most like a band of paint, and how much like one it is.
 *
 * Model    a place's share of paint: how far its paintness lies above level - SOFT, up to level + SOFT; a column's share: the mean over
 *          CORE; the stretch is the one with the greatest sum of share - HALF (Kadane), beginning within NEAR_MM of the face
 *          outer edge of each place across: where the mean paintness of the 2 mm before exceeds that of the 2 mm after most; a ring's edge
 *          is an arc that is even about the rod's middle, so a straight line through those places has no slope
 */

import { type BandColour, paintness } from './paint-hues.ts';
import { BESIDE, CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { alongOf, columnOf, type Strip } from './paint-strip.ts';

export type PaintRun = {
  readonly colour: BandColour;
  readonly fromMm: number;
  readonly toMm: number;
  /** Median paintness in the stretch, and the highest fifth of that of the rod outside it. */
  readonly inside: number;
  readonly outside: number;
  /** Median v of the stretch: see paint-light.ts. */
  readonly yellow: number;
  /** Share of the stretch's places that are painted. */
  readonly covered: number;
  /** Share of the places across that are painted along at least a third of the stretch. */
  readonly across: number;
  /** Drop of paintness at the outer edge: median over the places across. */
  readonly edgeDrop: number;
  /** Of the line through the edge's places, mm over one half width; what they scatter about it, mm. */
  readonly edgeSlopeMm: number;
  readonly edgeScatterMm: number;
  /** Along which the paintness falls from four fifths to one fifth of the drop. */
  readonly edgeWidthMm: number;
  /** Share of paint beside the rod along the stretch, the two sides; how far its outer edge lies from the stretch's there, mm. */
  readonly besideShare: readonly [number, number];
  readonly besideApartMm: readonly [number, number];
  /** Red light within 2.5 mm before the outer edge over that within 2.5 mm past it, logarithm. */
  readonly redStep: number;
  /** Share of what is seen beside the rod that has the stretch's paintness too. */
  readonly about: number;
};

/** Paint is brighter than what it lies on, rust darker; more than this would let shine and shadow decide. */
const BRIGHT = 0.2;
const SOFT = 0.2;
const HALF = 0.42;
const NEAR_MM = 20;
const BEFORE_MM = -4;

type Share = (paintness: number) => number;
const sharesAbout =
  (level: number): Share =>
  (paintness) =>
    Math.min(1, Math.max(0, (paintness - level + SOFT) / (2 * SOFT)));

export function paintRun(strip: Strip, map: PaintMap, colour: BandColour, level: number): PaintRun | null {
  const shareOf = sharesAbout(level);
  const painted = (values: readonly number[]) =>
    values.filter((value) => shareOf(value) >= 0.5).length / Math.max(1, values.length);
  const core = map.core.map((line) => {
    const usual = median(line.slice(columnOf(strip, 5)).flatMap((cell) => cell?.red ?? []));
    return line.map((cell) => (cell ? loudness(colour, cell, usual) : Number.NaN));
  });
  const beside = map.beside.map((line) =>
    line.map((cell) => (cell ? paintness(colour, cell.hue) : Number.NaN)),
  );
  const stretch = bestStretch(strip, core, shareOf);
  if (!stretch) return null;
  const [from, to] = stretch;
  const inside = core.flatMap((line) => line.slice(from, to)).filter((value) => !Number.isNaN(value));
  const outside = core
    .flatMap((line) => outsideOf(strip, line, from, to))
    .filter((value) => !Number.isNaN(value));
  const edges = core.map((line) => outerEdge(strip, line, to));
  const [slopeMm, scatterMm] = lineThrough(edges.map(({ alongMm }) => alongMm));
  const drop = median(edges.map(({ drop }) => drop));
  const [clear, reach] = [0.6, 2.5].map((mm) => Math.max(1, Math.round(mm / strip.stepMm))) as [
    number,
    number,
  ];
  const redAbout = (a: number, b: number) =>
    median(
      map.core
        .flatMap((line) => line.slice(Math.max(0, a), Math.max(a + 1, b)))
        .flatMap((cell) => cell?.red ?? []),
    );
  return {
    colour,
    fromMm: alongOf(strip, from) - strip.stepMm / 2,
    toMm: alongOf(strip, to) - strip.stepMm / 2,
    inside: median(inside),
    outside: quantile(outside, 0.8),
    yellow: median(map.core.flatMap((line) => line.slice(from, to)).flatMap((cell) => cell?.hue[1] ?? [])),
    covered: inside.filter((value) => shareOf(value) >= 0.5).length / inside.length,
    across: core.filter((line) => painted(line.slice(from, to)) > 1 / 3).length / CORE.length,
    edgeDrop: drop,
    edgeSlopeMm: slopeMm,
    edgeScatterMm: scatterMm,
    edgeWidthMm: edgeWidth(
      strip,
      core,
      edges.map(({ column }) => column),
    ),
    besideShare: [0, 1].map(
      (side) => sideOf(beside, side).reduce((sum, line) => sum + painted(line.slice(from, to)), 0) / 2,
    ) as [number, number],
    besideApartMm: [0, 1].map((side) =>
      Math.min(
        ...beside.flatMap((line, i) => {
          const across = BESIDE[i] as number;
          if (across > 0 !== (side === 1)) return [];
          return besideApart(strip, line, to + (slopeMm * across) / strip.stepMm, shareOf);
        }),
      ),
    ) as [number, number],
    redStep: Math.log(
      (redAbout(to - reach, to - clear) + 0.002) / (redAbout(to + clear, to + reach) + 0.002),
    ),
    about: painted(beside.flat().filter((value) => !Number.isNaN(value))),
  };
}

/** Paintness, more where red is brighter than it usually is along this line of the rod. */
function loudness(colour: BandColour, { hue, red }: PaintCell, usual: number): number {
  const brighter = Math.log((red + 0.002) / (usual + 0.002));
  return paintness(colour, hue) + BRIGHT * Math.min(1, Math.max(-1, brighter));
}

const sideOf = (beside: readonly (readonly number[])[], side: number) =>
  beside.filter((_, i) => BESIDE[i] !== undefined && (BESIDE[i] as number) > 0 === (side === 1));

function bestStretch(
  strip: Strip,
  core: readonly (readonly number[])[],
  shareOf: Share,
): readonly [number, number] | null {
  let best: readonly [number, number] | null = null;
  let [bestSum, sum, from] = [0, 0, 0];
  for (let column = columnOf(strip, BEFORE_MM); column < strip.columns; column += 1) {
    const shares = core
      .map((line) => line[column] ?? Number.NaN)
      .filter((value) => !Number.isNaN(value))
      .map(shareOf);
    const share = shares.length === 0 ? 0 : shares.reduce((total, value) => total + value, 0) / shares.length;
    if (sum <= 0) {
      [sum, from] = [0, column];
      if (alongOf(strip, column) > NEAR_MM) break;
    }
    sum += share - HALF;
    if (sum > bestSum) [bestSum, best] = [sum, [from, column + 1]];
  }
  return best;
}

/** The rod's own metal: from a little past the stretch as far as 22 mm, and what lies between the face and the stretch. */
function outsideOf<T>(strip: Strip, line: readonly T[], from: number, to: number): readonly T[] {
  const clear = Math.round(1.5 / strip.stepMm);
  const reach = Math.round(22 / strip.stepMm);
  return [
    ...line.slice(Math.min(columnOf(strip, 1), from - clear), Math.max(0, from - clear)),
    ...line.slice(to + clear, to + clear + reach),
  ];
}

function outerEdge(strip: Strip, line: readonly number[], to: number) {
  const reach = Math.max(2, Math.round(2 / strip.stepMm));
  const around = Math.round(3.5 / strip.stepMm);
  let best = { column: to, alongMm: alongOf(strip, to), drop: Number.NEGATIVE_INFINITY };
  for (
    let column = Math.max(reach, to - around);
    column <= Math.min(line.length - reach, to + around);
    column += 1
  ) {
    const drop = mean(line.slice(column - reach, column)) - mean(line.slice(column, column + reach));
    if (drop > best.drop) best = { column, alongMm: alongOf(strip, column) - strip.stepMm / 2, drop };
  }
  return best.drop === Number.NEGATIVE_INFINITY ? { ...best, drop: 0 } : best;
}

/** Slope of alongMm over CORE, and the rest's mean size once the even arc is taken off. */
function lineThrough(alongMm: readonly number[]): readonly [number, number] {
  const even = alongMm.map((value, i) => (value + (alongMm[alongMm.length - 1 - i] ?? value)) / 2);
  const odd = alongMm.map((value, i) => value - (even[i] ?? value));
  const sum = CORE.reduce((total, across) => total + across * across, 0);
  const slope = odd.reduce((total, value, i) => total + value * (CORE[i] ?? 0), 0) / sum;
  const rest = odd.map((value, i) => Math.abs(value - slope * (CORE[i] ?? 0)));
  const bend = even.map((value) => Math.abs(value - median(even)));
  return [slope, (mean(rest) + mean(bend)) / 2];
}

function edgeWidth(strip: Strip, core: readonly (readonly number[])[], columns: readonly number[]): number {
  const reach = Math.round(4 / strip.stepMm);
  const profile = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    median(
      core
        .map((line, row) => line[(columns[row] ?? 0) + i - reach] ?? Number.NaN)
        .filter((value) => !Number.isNaN(value)),
    ),
  );
  const [high, low] = [median(profile.slice(0, Math.max(1, reach - 1))), median(profile.slice(reach + 2))];
  const level = (part: number) => low + part * (high - low);
  let [begin, end] = [reach, reach];
  while (begin > 0 && (profile[begin] ?? 0) < level(0.8)) begin -= 1;
  while (end < 2 * reach && (profile[end] ?? 0) > level(0.2)) end += 1;
  return (end - begin) * strip.stepMm;
}

/** From where the stretch's outer edge would go on beside the rod to the nearest place where paint ends there, mm. */
function besideApart(strip: Strip, line: readonly number[], edge: number, shareOf: Share): number {
  let best = line.length;
  for (let column = 1; column < line.length; column += 1)
    if (shareOf(line[column - 1] ?? Number.NaN) >= 0.5 && !(shareOf(line[column] ?? Number.NaN) >= 0.5))
      best = Math.min(best, Math.abs(column - edge));
  return best * strip.stepMm;
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN;
}

export const median = (values: readonly number[]) => quantile(values, 0.5);
