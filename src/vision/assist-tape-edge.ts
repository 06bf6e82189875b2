/**
 * The edge of a tape's blade along a line that was marked on it.
 *
 * Model    across the marked line, every few pixels along it, the steepest steps of brightness, up or down: a blade lies before what is
 *          darker here and lighter there, and before a sky of its own brightness its strokes alone make steps; the straight line that
 *          most of them lie on, then least squares over those; s along the marked line, t across: t = at + slope s
 * Assumes  a straight blade whose edge is within reach of the marks, and stands out there from what is behind it
 * Fails    'tape/no-edge' where too few steps lie on one line, with their share
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Gray } from './gray.ts';
import { levelAt } from './level-at.ts';
import { type Columns, NEAR_PX, type Step, type Support, supportIn, supportOf } from './line-support.ts';
import type { Point } from './point.ts';

export type Frame = { readonly origin: Point; readonly along: Point; readonly across: Point };
/** lighter: the way from the edge to where most steps say that it is lighter, along or against t. Mostly that over the blade. */
export type TapeEdge = {
  readonly at: number;
  readonly slope: number;
  readonly uAtPx: number;
  readonly lighter: 1 | -1;
};
export type NoTapeEdge = { readonly code: 'tape/no-edge'; readonly share: number };

const STEPS_ALONG = 160;
/** Of the length, from each end: a line is laid through a step of the one and a step of the other. */
const END_SHARE = 0.35;
const MOST_SLOPE = 0.15;
/** Of steps, through which lines are laid. */
const MOST_PAIRS = 4000;
/** Steps of this share of all pairs meet them evenly, and each column with each other. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const LEAST_SHARE = 0.55;
/** Of 255 levels, over two pixels: less is noise. */
const LEAST_RISE = 8;

export const placeIn = ({ origin, along, across }: Frame, s: number, t: number): Point => [
  origin[0] + s * along[0] + t * across[0],
  origin[1] + s * along[1] + t * across[1],
];

/** The brightness at placeIn. */
export const levelIn = (gray: Gray, { origin, along, across }: Frame, s: number, t: number): number =>
  levelAt(gray, origin[0] + s * along[0] + t * across[0], origin[1] + s * along[1] + t * across[1]);

export function tapeEdge(
  gray: Gray,
  frame: Frame,
  lengthPx: number,
  reachPx: number,
  mostPairs = MOST_PAIRS,
): Result<TapeEdge, NoTapeEdge> {
  const half = Math.ceil(reachPx) + 2;
  const apartPx = lengthPx / STEPS_ALONG;
  const columns = Array.from({ length: STEPS_ALONG }, (_, i) => {
    const s = ((i + 0.5) / STEPS_ALONG) * lengthPx;
    return { s, levels: levelsAcross(gray, frame, s, half) };
  });
  const [up, down] = ([1, -1] as const).map((rising) =>
    columns.map(({ s, levels }) => stepsAcross(levels, s, half, rising)),
  ) as [Step[][], Step[][]];
  const line = lineThrough(
    {
      steps: up.map((steps, i) => [...steps, ...(down[i] as Step[])]),
      firstPx: apartPx / 2,
      apartPx,
      // A line through two steps leaves their room by what it leans over the first or the last columns.
      roomPx: half + Math.ceil(END_SHARE * MOST_SLOPE * lengthPx) + 1,
    },
    lengthPx,
    mostPairs,
  );
  if (!line || line.share < LEAST_SHARE) return fail({ code: 'tape/no-edge', share: line?.share ?? 0 });
  const { at, slope, uAtPx } = line;
  return ok({ at, slope, uAtPx, lighter: countOn(up, at, slope) < countOn(down, at, slope) ? -1 : 1 });
}

function countOn(steps: readonly (readonly Step[])[], at: number, slope: number): number {
  let count = 0;
  for (const column of steps) for (const { s, t } of column) if (isNear(s, t, at, slope)) count++;
  return count;
}

export function levelsAcross(gray: Gray, frame: Frame, s: number, half: number): Float64Array {
  const levels = new Float64Array(2 * half + 1);
  for (let i = 0; i < levels.length; i++) levels[i] = levelIn(gray, frame, s, i - half);
  return levels;
}

/** Local maxima of the slope across, smoothed over two pixels. */
export function stepsAcross(level: Float64Array, s: number, half: number, rising: 1 | -1): Step[] {
  const riseAt = (i: number) => rising * ((level[i + 1] as number) - (level[i - 1] as number));
  const steps: Step[] = [];
  for (let i = 2; i < level.length - 2; i++) {
    const here = riseAt(i);
    if (here < LEAST_RISE) continue;
    const before = riseAt(i - 1);
    const after = riseAt(i + 1);
    if (here < before || here <= after) continue;
    const shift = (before - after) / (2 * (before - 2 * here + after) || -1);
    steps.push({ s, t: i - half + shift, rise: here });
  }
  return steps;
}

type Line = { readonly at: number; readonly slope: number; readonly uAtPx: number; readonly share: number };

function lineThrough(columns: Columns, lengthPx: number, mostPairs: number): Line | null {
  const support = supportIn(columns);
  const { along, across } = support;
  const steps = along.length;
  let firsts = 0;
  while (firsts < steps && (along[firsts] as number) < END_SHARE * lengthPx) firsts++;
  let lasts = 0;
  while (lasts < steps && (along[steps - 1 - lasts] as number) > (1 - END_SHARE) * lengthPx) lasts++;
  let best: { readonly at: number; readonly slope: number } | null = null;
  let least = 0;
  const pairs = firsts * lasts;
  for (let tried = 0; tried < Math.min(pairs, mostPairs); tried++) {
    const pair = pairs <= mostPairs ? tried : Math.floor(((tried * GOLDEN) % 1) * pairs);
    const a = Math.floor(pair / lasts);
    const b = steps - lasts + (pair % lasts);
    const [s, t] = [along[a] as number, across[a] as number];
    const slope = ((across[b] as number) - t) / ((along[b] as number) - s);
    if (Math.abs(slope) > MOST_SLOPE) continue;
    const at = t - slope * s;
    const nearness = 1 - 0.3 * Math.min(1, Math.abs(at + (slope * lengthPx) / 2) / 60);
    const sum = supportOf(support, at, slope, least / nearness);
    if (sum === null || (best && sum * nearness <= least)) continue;
    best = { at, slope };
    least = sum * nearness;
  }
  if (!best) return null;
  let line = { at: best.at, slope: best.slope, uAtPx: 0 };
  for (let round = 0; round < 3; round++) line = straight(support, line.at, line.slope) ?? line;
  return { ...line, share: columnsOn(support, line.at, line.slope) / STEPS_ALONG };
}

/** Columns that have a step near the line. */
function columnsOn({ along, across }: Support, at: number, slope: number): number {
  let count = 0;
  let last = -1;
  for (let i = 0; i < along.length; i++) {
    const s = along[i] as number;
    if (s === last || !isNear(s, across[i] as number, at, slope)) continue;
    count++;
    last = s;
  }
  return count;
}

const isNear = (s: number, t: number, at: number, slope: number) => Math.abs(t - at - slope * s) < NEAR_PX;

/** The line through the steps near a line. */
function straight(
  { along, across }: Support,
  nearAt: number,
  nearSlope: number,
): { at: number; slope: number; uAtPx: number } | null {
  const [s, t] = [new Float64Array(along.length), new Float64Array(along.length)];
  let n = 0;
  for (let i = 0; i < along.length; i++) {
    if (!isNear(along[i] as number, across[i] as number, nearAt, nearSlope)) continue;
    s[n] = along[i] as number;
    t[n] = across[i] as number;
    n++;
  }
  if (n < 10) return null;
  let [ms, mt] = [0, 0];
  for (let i = 0; i < n; i++) {
    ms += s[i] as number;
    mt += t[i] as number;
  }
  ms /= n;
  mt /= n;
  let [spread, product] = [0, 0];
  for (let i = 0; i < n; i++) {
    const ds = (s[i] as number) - ms;
    spread += ds ** 2;
    product += ds * ((t[i] as number) - mt);
  }
  const slope = product / n / (spread / n);
  const at = mt - slope * ms;
  let square = 0;
  for (let i = 0; i < n; i++) square += ((t[i] as number) - at - slope * (s[i] as number)) ** 2;
  return { at, slope, uAtPx: Math.sqrt(square / n) / Math.sqrt(n) };
}
