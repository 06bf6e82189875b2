/**
 * Whether something runs across the push rod and goes on, straight, to both sides of it, as a hose or a strap before it does and a band
 * never.
 *
 * Model    colour of a place: (u, v, half of ln red); how far it is from another's counts up to MOST
 *          for every column and slope, over a WINDOW along the rod: the mean distance from the rod's middle to what lies so far along and
 *          across from it, on the rod and on each side; of rod and side the greater, taken off the mean distance to all of that side;
 *          of both sides the lesser, a side outside the picture left out; of all slopes the greatest
 * Assumes  what crosses is straight over the strip's width
 * Fails    where rod and sides look alike everywhere: it comes to nothing there, whatever crosses
 */
import { type Colour, colourOf } from './paint-colour-edge.ts';
import type { RodEdges } from './paint-edges.ts';
import { BESIDE, CORE, type PaintCell, type PaintMap } from './paint-map.ts';
import { meanOf } from './paint-numbers.ts';
import type { Strip } from './paint-strip.ts';

const MOST = 1;
const WINDOW_MM = 4;
/** Along the rod for as much across. */
const SLOPES = [-1.1, -0.88, -0.66, -0.44, -0.22, 0, 0.22, 0.44, 0.66, 0.88, 1.1];
/** Of CORE. */
const MIDDLE: readonly [from: number, to: number] = [3, 6];
/** Of a side's columns so many stand for all. */
const SOME = 60;
/** Places of a side, for each column of the window, without which nothing is said of it. */
const LEAST = 1.5;

type Line = readonly (Colour | null)[];
/** Lines along the rod, and where each lies across it. */
type Part = { readonly across: readonly number[]; readonly lines: readonly Line[] };

/** By column of the strip; -1 where nothing can be said. */
export function carryOn(strip: Strip, { half }: RodEdges, map: PaintMap): readonly number[] {
  const core = map.core.map((line) => line.map(placeOf));
  const rod: Part = { across: CORE, lines: core };
  const sides = [0, BESIDE.length / 2].map((from): Part => {
    const part = <T>(of: readonly T[]) => of.slice(from, from + BESIDE.length / 2);
    return { across: part(BESIDE), lines: part(map.beside).map((line) => line.map(placeOf)) };
  });
  const middle = Array.from({ length: strip.columns }, (_, column) => middleOf(core, column));
  const window = Math.max(2, Math.round(WINDOW_MM / strip.stepMm));
  const usual = sides.map((side) => windowMeans(usualApart(middle, side), window, 1));
  const halfCells = half / strip.stepAcross;
  const best = middle.map(() => -1);
  for (const slope of SLOPES) {
    const apart = (part: Part, least: number) =>
      windowMeans(apartAlong(middle, part, slope * halfCells), window, least);
    const onRod = apart(rod, 1);
    const beside = sides.map((side) => apart(side, LEAST * window));
    best.forEach((before, column) => {
      const gains = sides.flatMap((_, i) => {
        const there = beside[i]?.[column] as number;
        const gain = (usual[i]?.[column] as number) - Math.max(there, onRod[column] as number);
        return Number.isNaN(gain) ? [] : [gain];
      });
      if (gains.length > 0) best[column] = Math.max(before, Math.min(...gains));
    });
  }
  return best;
}

function placeOf(cell: PaintCell | null): Colour | null {
  if (!cell) return null;
  const [u, v, red] = colourOf(cell);
  return [u, v, red / 2];
}

function middleOf(core: readonly Line[], column: number): Colour | null {
  const places = core.slice(...MIDDLE).flatMap((line) => (line[column] ? [line[column]] : []));
  if (places.length === 0) return null;
  return [0, 1, 2].map((i) => meanOf(places.map((place) => place[i] as number))) as unknown as Colour;
}

const apartBy = (a: Colour, b: Colour) =>
  Math.min(MOST, Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2));

/** By column a sum of distances and their count. */
type Sums = readonly (readonly [sum: number, count: number])[];

const summed = (from: Colour | null, places: readonly (Colour | null | undefined)[]) => {
  let [sum, count] = [0, 0];
  for (const place of places)
    if (from && place) {
      sum += apartBy(from, place);
      count += 1;
    }
  return [sum, count] as const;
};

/** shift: columns for each half width across. */
const apartAlong = (middle: Line, { across, lines }: Part, shift: number): Sums =>
  middle.map((from, column) =>
    summed(
      from,
      lines.map((line, i) => line[column + Math.round(shift * (across[i] as number))]),
    ),
  );

function usualApart(middle: Line, { lines }: Part): Sums {
  const every = Math.max(1, Math.floor(middle.length / SOME));
  const some = lines.flatMap((line) => line.filter((_, column) => column % every === 0));
  return middle.map((from) => {
    const [sum, count] = summed(from, some);
    return count === 0 ? [0, 0] : [sum / count, 1];
  });
}

/** Over a window about each column; NaN where fewer than `least` count. */
function windowMeans(sums: Sums, window: number, least: number): readonly number[] {
  const before = Math.floor(window / 2);
  return sums.map((_, column) => {
    let [total, number] = [0, 0];
    for (
      let at = Math.max(0, column - before);
      at < Math.min(sums.length, column - before + window);
      at += 1
    ) {
      const [sum, count] = sums[at] as Sums[number];
      total += sum;
      number += count;
    }
    return number < least || number === 0 ? Number.NaN : total / number;
  });
}
