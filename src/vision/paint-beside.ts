/** What lies beside the push rod along a stretch of it: whether the stretch goes on there. */
import { fallNear } from './paint-edge-shape.ts';
import type { BandEnds } from './paint-ends.ts';
import { type BandColour, paintness } from './paint-hues.ts';
import type { Hue } from './paint-light.ts';
import { BESIDE, type PaintCell, type PaintMap } from './paint-map.ts';
import { meanOf, median, quantile } from './paint-numbers.ts';
import { cellsOf, columnOf, type Strip } from './paint-strip.ts';

/** In u and v together. */
const NEAR_HUE = 0.22;

export const isNear = (one: Hue, other: Hue): boolean =>
  Math.abs(one[0] - other[0]) < NEAR_HUE && Math.hypot(one[0] - other[0], one[1] - other[1]) < NEAR_HUE;

/** What of it is the same for every stretch. */
export type Beside = {
  readonly lines: PaintMap['beside'];
  readonly cells: readonly PaintCell[];
  /** Paintness by line and column, NaN where the picture ends; of all the cells. */
  readonly paint: readonly (readonly number[])[];
  readonly paints: readonly number[];
  /** By column: whether the same hue and light lie on both sides of both of the rod's edges. */
  readonly edgeless: readonly boolean[];
  /** High u. */
  readonly besideU: number;
  /** Greatest paintness about the face, of the columns' medians. */
  readonly facePaint: number;
};

/** About the face, as far as marks put it wrong. */
const FACE_MM: readonly [fromMm: number, toMm: number] = [-6, 2];

export function besideRod(strip: Strip, map: PaintMap, colour: BandColour): Beside {
  const cells = map.beside.flat().filter((cell) => cell !== null);
  const paint = map.beside.map((line) =>
    line.map((cell) => (cell ? paintness(colour, cell.hue) : Number.NaN)),
  );
  return {
    lines: map.beside,
    cells,
    paints: cells.map(({ hue }) => paintness(colour, hue)),
    paint,
    facePaint: facePaint(strip, paint),
    edgeless: Array.from({ length: strip.columns }, (_, column) => isEdgeless(map, column)),
    besideU: quantile(
      cells.map(({ hue }) => hue[0]),
      0.8,
    ),
  };
}

function facePaint(strip: Strip, paint: Beside['paint']): number {
  let greatest = Number.NEGATIVE_INFINITY;
  for (
    let column = Math.max(0, columnOf(strip, FACE_MM[0]));
    column < columnOf(strip, FACE_MM[1]);
    column += 1
  ) {
    const across = paint.map((line) => line[column] as number).filter((value) => !Number.isNaN(value));
    if (across.length > 0) greatest = Math.max(greatest, median(across));
  }
  return greatest;
}

type Stretch = { readonly hue: Hue; readonly loudFrom: number; readonly fall: number };

export function besideOf(
  strip: Strip,
  { lines, paint, paints, edgeless, besideU }: Beside,
  { from, to }: BandEnds,
  { hue, loudFrom, fall }: Stretch,
) {
  const isLoud = (value: number) => value > loudFrom;
  const like = lines.map((line) => line.map((cell) => cell && isNear(cell.hue, hue)));
  const cells = cellsOf(strip);
  const longest = Math.max(cells(2), to - Math.max(from, columnOf(strip, 0)));
  const besideShare = (side: number) =>
    meanOf(sideOf(paint, side).map((line) => shareOf(line.slice(from, Math.max(from + 1, to)), isLoud)));
  const apartMm = (side: number) =>
    Math.min(...sideOf(paint, side).map((line) => besideApart(strip, line, to, isLoud)));
  const crosses = (side: number) =>
    median(sideOf(like, side).map((line) => bestShare(line, longest, from - cells(25), to + cells(25))));
  return {
    about: shareOf(paints, isLoud),
    besideFall: Math.max(...paint.map((line) => fallNear(strip, line, to))) / Math.max(0.05, fall),
    besideShare: [besideShare(0), besideShare(1)] as const,
    besideApartMm: [apartMm(0), apartMm(1)] as const,
    hueBeside: shareLike(like, 0, strip.columns),
    crosses: Math.min(crosses(0), crosses(1)),
    edgeless: shareOf(edgeless.slice(Math.max(0, from), Math.max(0, to)), (is) => is),
    atFace: shareLike(like, columnOf(strip, -6), columnOf(strip, 0.5)),
    besideU,
  };
}

const sideOf = <T>(beside: readonly T[], side: number): readonly T[] =>
  beside.filter((_, i) => (BESIDE[i] as number) > 0 === (side === 1));

const shareOf = <T>(values: readonly T[], holds: (value: T) => boolean): number =>
  values.filter(holds).length / Math.max(1, values.length);

function shareLike(like: readonly (readonly (boolean | null)[])[], from: number, to: number): number {
  let [alike, count] = [0, 0];
  for (const line of like)
    for (let column = Math.max(0, from); column < Math.min(line.length, to); column += 1) {
      const is = line[column];
      if (is === null) continue;
      count += 1;
      if (is) alike += 1;
    }
  return alike / Math.max(1, count);
}

function isEdgeless({ core, beside }: PaintMap, column: number): boolean {
  const rims = [core[0], core.at(-1)];
  return [BESIDE.length / 2 - 1, BESIDE.length / 2].every((i, side) => {
    const [rim, off] = [rims[side]?.[column], beside[i]?.[column]];
    if (!rim || !off) return false;
    const light = Math.abs(Math.log((rim.light + 0.004) / (off.light + 0.004)));
    return light < 0.5 && isNear(rim.hue, off.hue);
  });
}

/** The greatest share of a stretch so long between two columns. */
function bestShare(line: readonly (boolean | null)[], length: number, from: number, to: number): number {
  let [best, sum] = [0, 0];
  const first = Math.max(0, from);
  for (let column = first; column < Math.min(line.length, to); column += 1) {
    sum += (line[column] ? 1 : 0) - (column - length >= first && line[column - length] ? 1 : 0);
    best = Math.max(best, sum);
  }
  return best / length;
}

/** From where the stretch's outer edge would go on beside the rod to the nearest place where paint ends there, mm. */
function besideApart(
  strip: Strip,
  line: readonly number[],
  edge: number,
  isLoud: (value: number) => boolean,
): number {
  let best = line.length;
  for (let column = 1; column < line.length; column += 1)
    if (isLoud(line[column - 1] ?? Number.NaN) && !isLoud(line[column] ?? Number.NaN))
      best = Math.min(best, Math.abs(column - edge));
  return best * strip.stepMm;
}
