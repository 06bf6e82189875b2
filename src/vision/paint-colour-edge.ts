/**
 * How evenly the colour changes over an arc across the push rod, whatever the colours are: a band's edge goes all across, sharp and
 * square, where that of rust is ragged.
 *
 * Model    colour of a place: (u, v, ln red); its step at a column: the mean of so much before it less that of as much from it on, GAP
 *          to either side left out; m the mean of these steps over the rod's width, s the spread of their parts along m:
 *          the change is |m|, how even it is |m| / (s + LEAST)
 * Assumes  the arc bends as that of a ring about the rod (paint-ends)
 */
import { CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { cellsOf, type Strip } from './paint-strip.ts';

export type ColourEdge = {
  readonly change: number;
  readonly even: number;
  /** Of hue alone. */
  readonly hueChange: number;
  readonly hueEven: number;
  /** Share of places whose step is more than half of the mean one. */
  readonly across: number;
  /** Change over the nearest places, over that of the wider steps. */
  readonly sharp: number;
};

export type Colour = readonly [u: number, v: number, red: number];
export type Step = Colour;

/** By place across: sums of u, v, ln red and count, of all columns before one. */
export type ColourSums = readonly Float64Array[];

type Arc = { readonly to: number; readonly bend: readonly number[] };

export const STEP_MM = 2;
const NEAR_MM = 0.8;
const GAP_MM = 0.3;
const LEAST = 0.06;
const SIZE = 4;
const NONE: ColourEdge = { change: 0, even: 0, hueChange: 0, hueEven: 0, across: 0, sharp: 0 };

export const colourOf = ({ hue, red }: PaintCell): Colour => [hue[0], hue[1], Math.log(red + 0.002)];

export const colourSums = ({ core }: PaintMap): ColourSums =>
  core.map((line) => {
    const sums = new Float64Array(SIZE * (line.length + 1));
    line.forEach((cell, column) => {
      const values = cell ? [...colourOf(cell), 1] : [0, 0, 0, 0];
      values.forEach((value, i) => {
        sums[SIZE * (column + 1) + i] = (sums[SIZE * column + i] as number) + value;
      });
    });
    return sums;
  });

/** Nothing where the picture ends. */
export function colourEdge(strip: Strip, sums: ColourSums, arc: Arc): ColourEdge {
  const wide = stepsAt(strip, sums, arc, STEP_MM);
  const near = stepsAt(strip, sums, arc, NEAR_MM);
  if (wide.length < CORE.length / 2 || near.length < CORE.length / 2) return NONE;
  const all = changeOf(wide, 3);
  const hue = changeOf(wide, 2);
  return {
    ...all,
    hueChange: hue.change,
    hueEven: hue.even,
    sharp: changeOf(near, 3).change / (all.change + LEAST),
  };
}

/** By place across, where the picture goes so far. */
function stepsAt(strip: Strip, sums: ColourSums, { to, bend }: Arc, reachMm: number): readonly Step[] {
  const step = stepOf(strip, reachMm);
  return sums.flatMap((line, row) => {
    const there = step(line, to + (bend[row] ?? 0));
    return there ? [there] : [];
  });
}

/** Of one line of the rod at a column; null where the picture ends. */
export function stepOf(strip: Strip, reachMm: number): (line: Float64Array, at: number) => Step | null {
  const cells = cellsOf(strip);
  const [reach, gap] = [cells(reachMm), cells(GAP_MM)];
  return (line, at) => {
    const before = meanBetween(line, at - gap - reach, at - gap);
    const after = meanBetween(line, at + gap, at + gap + reach);
    return before && after ? [before[0] - after[0], before[1] - after[1], before[2] - after[2]] : null;
  };
}

function meanBetween(line: Float64Array, from: number, to: number): Colour | null {
  if (from < 0 || to > line.length / SIZE - 1) return null;
  const sum = (i: number) => (line[SIZE * to + i] as number) - (line[SIZE * from + i] as number);
  const count = sum(3);
  return count === 0 ? null : [sum(0) / count, sum(1) / count, sum(2) / count];
}

/** channels: two for hue alone. */
export function changeOf(steps: readonly Step[], channels: 2 | 3) {
  let [u, v, red] = [0, 0, 0];
  for (const step of steps) {
    u += step[0];
    v += step[1];
    red += step[2];
  }
  const m: Step = [u / steps.length, v / steps.length, channels === 3 ? red / steps.length : 0];
  const change = Math.hypot(...m);
  const parts = steps.map(
    (step) => (step[0] * m[0] + step[1] * m[1] + step[2] * m[2]) / Math.max(1e-9, change),
  );
  const spread = Math.sqrt(parts.reduce((sum, part) => sum + (part - change) ** 2, 0) / parts.length);
  return {
    change,
    even: change / (spread + LEAST),
    across: parts.filter((part) => part > change / 2).length / parts.length,
  };
}
