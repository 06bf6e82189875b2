/**
 * Where the push rod's two edges really are in the strip: marks and scale give them roughly.
 *
 * Model    middle m(s) = offset + turn s, half width w, in half widths as marked, s from 0 at the face to 1 at the strip's end; chosen so
 *          that the most columns show an edge at m - w and at m + w, less what speaks against leaving the marked place
 *          an edge: light or hue changes across the rod within one cell to each side, counted up to CAP
 * Assumes  the marks are right to half a half width
 * Fails    where rod and background look alike: then the marked place stays, with little evidence
 */
import { columnOf, type Strip } from './paint-strip.ts';

export type RodEdges = {
  readonly offset: number;
  readonly turn: number;
  readonly half: number;
  /** Share of columns with an edge, mean of both sides. */
  readonly evidence: number;
};

/** In natural logarithms of light: a third more or less. */
export const CAP = 0.35;
const OFFSETS = range(-0.45, 0.45, 0.075);
const TURNS = range(-0.4, 0.4, 0.1);
const HALVES = range(0.76, 1.24, 0.06);
/** Share of columns that leaving the marked place by half a half width must gain. */
const DOUBT = 0.12;

export function rodEdges(strip: Strip): RodEdges {
  const steps = edgeSteps(strip);
  const [from, to] = [columnOf(strip, 3), Math.min(strip.columns, columnOf(strip, 52))];
  const gap = Math.max(1, Math.round((to - from) / 60));
  const along = (column: number) => column / strip.columns;
  let best: RodEdges & { score: number } = {
    offset: 0,
    turn: 0,
    half: 1,
    evidence: 0,
    score: Number.NEGATIVE_INFINITY,
  };
  for (const half of HALVES)
    for (const offset of OFFSETS)
      for (const turn of TURNS) {
        let [upper, lower, count] = [0, 0, 0];
        for (let column = from; column < to; column += gap, count += 1) {
          const middle = offset + turn * along(column);
          upper += steps(middle - half, column);
          lower += steps(middle + half, column);
        }
        // Both edges must show: one strong one is something else's.
        const evidence = Math.sqrt((upper / count) * (lower / count)) / CAP;
        const away = (offset + turn / 3) ** 2 / 0.25 + turn ** 2 / 0.16 + (half - 1) ** 2 / 0.0225;
        const score = evidence - (DOUBT * away) / 4;
        if (score > best.score) best = { offset, turn, half, evidence, score };
      }
  const { offset, turn, half, evidence } = best;
  return { offset, turn, half, evidence };
}

/** How much changes across the rod at a place, 0 to CAP. */
export function edgeSteps(strip: Strip): (across: number, column: number) => number {
  const { rows, columns, linear, stepAcross } = strip;
  const reach = Math.max(1, Math.round(0.12 / stepAcross));
  // The same places are asked for a thousand times.
  const known = new Float64Array(rows * columns).fill(-1);
  return (across, column) => {
    const row = Math.round(across / stepAcross + (rows - 1) / 2);
    if (row - reach < 0 || row + reach >= rows) return 0;
    const place = row * columns + column;
    const before = known[place] as number;
    if (before >= 0) return before;
    const step = largestStep(linear, 3 * (place - reach * columns), 3 * (place + reach * columns));
    known[place] = step;
    return step;
  };
}

function largestStep(linear: Float32Array, above: number, below: number): number {
  let largest = 0;
  for (let i = 0; i < 3; i += 1)
    largest = Math.max(largest, Math.abs(logAt(linear, above + i) - logAt(linear, below + i)));
  return Number.isNaN(largest) ? 0 : Math.min(CAP, largest);
}

const logAt = (linear: Float32Array, at: number) => Math.fround(Math.log((linear[at] as number) + 0.01));

function range(from: number, to: number, step: number): readonly number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
}
