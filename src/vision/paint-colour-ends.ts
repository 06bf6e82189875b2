/**
 * Where along the push rod the colour changes most evenly all across it, whatever the colours are: candidates for a band's outer edge that
 * the odds of its hue do not show, as of a faded band on a rusty rod.
 *
 * Model    for every column the bend of the arc with the most even change (paint-colour-edge); the columns where that is greatest about
 */
import { type ColourSums, changeOf, colourOf, STEP_MM, type Step, stepOf } from './paint-colour-edge.ts';
import { CORE, type PaintMap } from './paint-map.ts';
import { columnOf, type Strip } from './paint-strip.ts';

export type ColourEnd = {
  readonly to: number;
  readonly bend: readonly number[];
  /** By place across and column, how far its colour goes the way of the change. */
  readonly alongChange: readonly (readonly number[])[];
};

const MOST = 3;
const LEAST_CHANGE = 0.12;

/** apart: columns between two of them at least. */
export function colourEnds(
  strip: Strip,
  map: PaintMap,
  sums: ColourSums,
  bends: readonly (readonly number[])[],
  [fromMm, toMm]: readonly [number, number],
  apart: number,
): readonly ColourEnd[] {
  const found: { to: number; bend: readonly number[]; even: number; steps: readonly Step[] }[] = [];
  // The arcs meet the same places again and again.
  const step = stepOf(strip, STEP_MM);
  const known = sums.map((line) => Array.from({ length: strip.columns }, (_, at) => step(line, at)));
  for (let to = columnOf(strip, fromMm); to <= columnOf(strip, toMm); to += 1) {
    let best: (typeof found)[number] = { to, bend: bends[0] as readonly number[], even: 0, steps: [] };
    for (const bend of bends) {
      const steps: Step[] = [];
      known.forEach((line, row) => {
        const there = line[to + (bend[row] ?? 0)];
        if (there) steps.push(there);
      });
      if (steps.length < CORE.length / 2) continue;
      const { change, even } = changeOf(steps, 3);
      if (change > LEAST_CHANGE && even > best.even) best = { to, bend, even, steps };
    }
    found.push(best);
  }
  return found
    .filter(
      ({ even }, i) =>
        even > 0 &&
        found.slice(Math.max(0, i - apart), i).every((other) => other.even < even) &&
        found.slice(i + 1, i + apart + 1).every((other) => other.even <= even),
    )
    .sort((a, b) => b.even - a.even)
    .slice(0, MOST)
    .map(({ to, bend, steps }) => ({ to, bend, alongChange: alongChange(map, steps) }));
}

function alongChange({ core }: PaintMap, steps: readonly Step[]): ColourEnd['alongChange'] {
  const way = [0, 1, 2].map((i) => steps.reduce((sum, step) => sum + (step[i] as number), 0));
  const size = Math.hypot(...way);
  return core.map((line) =>
    line.map((cell) =>
      cell
        ? colourOf(cell).reduce((sum, value, i) => sum + (value * (way[i] as number)) / size, 0)
        : Number.NaN,
    ),
  );
}
