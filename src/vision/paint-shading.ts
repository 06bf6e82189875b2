/**
 * Which way the light changes over a stretch of the push rod: paint is shaded across the rod as the rod itself is, what lies over the rod
 * by its own roundness.
 *
 * Model    along and across: squares of the slopes of ln light along the rod and across it, per mm, the light as the mean over as much along
 *          the rod as lies between two lines; mean over the lines, by column
 *          shadedAlong: their difference over their sum, over a stretch: 1 along the rod alone, -1 across it alone
 *          shadedAlike: correlation over the lines of the mean ln red of a stretch with that of the rod past it
 */
import { colourOf } from './paint-colour-edge.ts';
import type { RodEdges } from './paint-edges.ts';
import { CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { meanBetween, meanOf } from './paint-numbers.ts';
import type { Strip } from './paint-strip.ts';

/** By column of the strip; NaN where the picture ends. */
export type Shading = { readonly along: readonly number[]; readonly across: readonly number[] };

/** Squared, per mm: less is none. */
const LEAST = 1e-5;

export function shadingOf(strip: Strip, { half }: RodEdges, { core }: PaintMap): Shading {
  const gapMm = ((CORE[1] as number) - (CORE[0] as number)) * half * (strip.stepMm / strip.stepAcross);
  const reach = Math.max(1, Math.round(gapMm / strip.stepMm / 2));
  const light = core.map((line) => {
    const own = line.map((cell) => (cell ? Math.log(cell.light + 0.004) : Number.NaN));
    return own.map((_, column) => meanBetween(own, column - reach, column + reach + 1));
  });
  const at = (row: number, column: number) => light[row]?.[column] ?? Number.NaN;
  const byColumn = (slope: (row: number, column: number) => number) =>
    Array.from({ length: strip.columns }, (_, column) =>
      meanOf(light.map((_, row) => slope(row, column) ** 2)),
    );
  return {
    along: byColumn((row, column) => (at(row, column + 1) - at(row, column - 1)) / (2 * strip.stepMm)),
    across: byColumn((row, column) => (at(row + 1, column) - at(row - 1, column)) / (2 * gapMm)),
  };
}

export function shadedAlong({ along, across }: Shading, from: number, to: number): number {
  const [a, b] = [meanBetween(along, from, to), meanBetween(across, from, to)];
  return (a - b) / (a + b + LEAST);
}

/** Lines of the stretch and of the rod past it, in the same order. */
export function shadedAlike(
  lines: readonly (readonly PaintCell[])[],
  past: readonly (readonly PaintCell[])[],
): number {
  const profile = (of: typeof lines) => of.map((line) => meanOf(line.map((cell) => colourOf(cell)[2])));
  const [one, other] = [profile(lines), profile(past)];
  const both = one.flatMap((value, i) => {
    const beyond = other[i] as number;
    return Number.isNaN(value + beyond) ? [] : [[value, beyond] as const];
  });
  if (both.length < CORE.length / 2) return 0;
  const middle = [meanOf(both.map(([a]) => a)), meanOf(both.map(([, b]) => b))] as const;
  const product = (i: 0 | 1, j: 0 | 1) =>
    both.reduce((sum, pair) => sum + (pair[i] - middle[i]) * (pair[j] - middle[j]), 0);
  return product(0, 1) / Math.sqrt(Math.max(1e-9, product(0, 0) * product(1, 1)));
}
