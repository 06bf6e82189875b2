/**
 * The shape of a stretch's outer edge on the push rod.
 *
 * Model    along every place across, where the loudness falls most near where the edge's arc has it; the line through those places; the
 *          same fall along straight lines aslant over the arc; along what length it falls
 */
import type { BandEnds, Loudness } from './paint-ends.ts';
import { CORE } from './paint-map.ts';
import { fallAt, meanOf, median } from './paint-numbers.ts';
import type { Strip } from './paint-strip.ts';

const ASLANT_MM = [-9, -6, -4, -2.5, -1.2, 1.2, 2.5, 4, 6, 9];

export function edgeShape(strip: Strip, loudness: Loudness, { to, bend }: BandEnds) {
  const reach = Math.max(1, Math.round(2.5 / strip.stepMm));
  const falls = loudness
    .map((line, row) => fallAt(line, to + (bend[row] ?? 0), reach))
    .filter((value) => !Number.isNaN(value));
  const fall = meanOf(falls);
  const spread = Math.sqrt(meanOf(falls.map((value) => (value - fall) ** 2)));
  const edges = loudness.map((line, row) => outerEdge(strip, line, to + (bend[row] ?? 0)));
  const [slopeMm, scatterMm] = lineThrough(edges);
  return {
    fall,
    fallEven: fall / (spread + 0.05),
    fallRows: falls.filter((value) => value > 0.5 * fall && value > 0.04).length / Math.max(1, falls.length),
    slopeMm,
    scatterMm,
    widthMm: edgeWidth(strip, loudness, to, bend),
    aslant: aslantOf(strip, loudness, to, bend, fall),
    drop: median(loudness.map((line, row) => fallNear(strip, line, to + (bend[row] ?? 0)))),
  };
}

/** The fall along the best straight line aslant over the arc, over that along the arc; 1 where none is better. */
function aslantOf(
  strip: Strip,
  loudness: Loudness,
  to: number,
  bend: readonly number[],
  fall: number,
): number {
  const reach = reachOf(strip);
  let best = 1;
  for (const mm of ASLANT_MM) {
    const along = meanOf(
      loudness.map((line, row) => {
        const at = to + (bend[row] ?? 0) + Math.round((mm * (CORE[row] ?? 0)) / strip.stepMm);
        return at < 1 ? Number.NaN : fallAt(line, at, reach);
      }),
    );
    if (along / Math.max(0.05, fall) > best) best = along / Math.max(0.05, fall);
  }
  return best;
}

/** How far the line's own steepest place lies from where the arc has it, mm. */
const outerEdge = (strip: Strip, line: readonly number[], at: number): number =>
  (steepest(strip, line, at, 3).column - at) * strip.stepMm;

/** The line's greatest fall near there, never below nothing. */
export const fallNear = (strip: Strip, line: readonly number[], at: number): number =>
  Math.max(0, steepest(strip, line, at, 1.5).fall);

function steepest(strip: Strip, line: readonly number[], at: number, aroundMm: number) {
  const reach = reachOf(strip);
  const around = Math.round(aroundMm / strip.stepMm);
  let best = { column: at, fall: Number.NEGATIVE_INFINITY };
  for (
    let column = Math.max(reach, at - around);
    column <= Math.min(line.length - reach, at + around);
    column += 1
  ) {
    const fall = fallAt(line, column, reach);
    if (fall > best.fall) best = { column, fall };
  }
  return best;
}

/** Columns to either side that a fall is taken over. */
const reachOf = (strip: Strip) => Math.max(2, Math.round(2 / strip.stepMm));

/** Slope over CORE, and the rest's mean size. */
function lineThrough(offMm: readonly number[]): readonly [number, number] {
  const sum = CORE.reduce((total, across) => total + across * across, 0);
  const middle = meanOf(offMm);
  const slope = offMm.reduce((total, value, i) => total + (value - middle) * (CORE[i] ?? 0), 0) / sum;
  return [slope, meanOf(offMm.map((value, i) => Math.abs(value - middle - slope * (CORE[i] ?? 0))))];
}

function edgeWidth(strip: Strip, loudness: Loudness, to: number, bend: readonly number[]): number {
  const reach = Math.round(4 / strip.stepMm);
  const profile = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    median(
      loudness
        .map((line, row) => line[to + (bend[row] ?? 0) + i - reach] ?? Number.NaN)
        .filter((value) => !Number.isNaN(value)),
    ),
  );
  const [high, low] = [median(profile.slice(0, Math.max(1, reach - 1))), median(profile.slice(reach + 2))];
  const at = (part: number) => low + part * (high - low);
  let [begin, end] = [reach, reach];
  while (begin > 0 && (profile[begin] ?? 0) < at(0.8)) begin -= 1;
  while (end < 2 * reach && (profile[end] ?? 0) > at(0.2)) end += 1;
  return (end - begin) * strip.stepMm;
}
