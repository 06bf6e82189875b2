/**
 * The edge of a tape's blade along a line that was marked on it.
 *
 * Model    across the marked line, every few pixels along it, the steepest steps of brightness; the straight line that most of them
 *          lie on, then least squares over those; s along the marked line, t across: t = at + slope s
 * Assumes  a straight blade whose edge is within reach of the marks, and stands out there from what is behind it
 * Fails    'tape/no-edge' where too few steps lie on one line, with their share
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Gray } from './gray.ts';
import { levelAt } from './level-at.ts';
import type { Point } from './point.ts';

export type Frame = { readonly origin: Point; readonly along: Point; readonly across: Point };
/** inward: the way from the edge over the blade, along or against t. */
export type TapeEdge = {
  readonly at: number;
  readonly slope: number;
  readonly uAtPx: number;
  readonly inward: 1 | -1;
};
export type NoTapeEdge = { readonly code: 'tape/no-edge'; readonly share: number };

type Step = { readonly s: number; readonly t: number; readonly rise: number };

const STEPS_ALONG = 160;
const NEAR_PX = 1;
const LEAST_SHARE = 0.55;
/** Of 255 levels, over two pixels: less is noise. */
const LEAST_RISE = 8;

export const placeIn = ({ origin, along, across }: Frame, s: number, t: number): Point => [
  origin[0] + s * along[0] + t * across[0],
  origin[1] + s * along[1] + t * across[1],
];

export function tapeEdge(
  gray: Gray,
  frame: Frame,
  lengthPx: number,
  reachPx: number,
): Result<TapeEdge, NoTapeEdge> {
  const columns = Array.from({ length: STEPS_ALONG }, (_, i) => ((i + 0.5) / STEPS_ALONG) * lengthPx);
  const lines = ([1, -1] as const).flatMap((rising) => {
    const steps = columns.flatMap((s) => stepsAcross(gray, frame, s, reachPx, rising));
    const line = lineThrough(steps, lengthPx);
    return line ? [{ ...line, rising }] : [];
  });
  const best = lines.sort((a, b) => score(b, lengthPx, reachPx) - score(a, lengthPx, reachPx))[0];
  if (!best || best.share < LEAST_SHARE) return fail({ code: 'tape/no-edge', share: best?.share ?? 0 });
  const { at, slope, uAtPx } = best;
  return ok({ at, slope, uAtPx, inward: best.rising });
}

/** Supported by many, and near to the marks. */
function score({ share, at, slope }: Line, lengthPx: number, reachPx: number): number {
  return share - 0.3 * (Math.abs(at + (slope * lengthPx) / 2) / reachPx);
}

/** Local maxima of the slope across, smoothed over two pixels. */
function stepsAcross(gray: Gray, frame: Frame, s: number, reachPx: number, rising: 1 | -1): Step[] {
  const half = Math.ceil(reachPx) + 2;
  const level: number[] = [];
  for (let t = -half; t <= half; t++) {
    const [x, y] = placeIn(frame, s, t);
    level.push(levelAt(gray, x, y));
  }
  const rise = level.map((_, i) => rising * ((level[i + 1] ?? 0) - (level[i - 1] ?? 0)));
  const steps: Step[] = [];
  for (let i = 2; i < level.length - 2; i++) {
    const [before, here, after] = [rise[i - 1] as number, rise[i] as number, rise[i + 1] as number];
    if (here < LEAST_RISE || here < before || here <= after) continue;
    const shift = (before - after) / (2 * (before - 2 * here + after) || -1);
    steps.push({ s, t: i - half + shift, rise: here });
  }
  return steps;
}

type Line = { readonly at: number; readonly slope: number; readonly uAtPx: number; readonly share: number };

function lineThrough(steps: readonly Step[], lengthPx: number): Line | null {
  const first = steps.filter(({ s }) => s < 0.35 * lengthPx);
  const last = steps.filter(({ s }) => s > 0.65 * lengthPx);
  let best: { readonly at: number; readonly slope: number; readonly support: number } | null = null;
  const every = Math.max(1, Math.floor((first.length * last.length) / 4000));
  let turn = 0;
  for (const a of first)
    for (const b of last) {
      if (turn++ % every !== 0) continue;
      const slope = (b.t - a.t) / (b.s - a.s);
      if (Math.abs(slope) > 0.15) continue;
      const at = a.t - slope * a.s;
      const support =
        supportOf(steps, at, slope) * (1 - 0.3 * Math.min(1, Math.abs(at + (slope * lengthPx) / 2) / 60));
      if (!best || support > best.support) best = { at, slope, support };
    }
  if (!best) return null;
  let line = { at: best.at, slope: best.slope, uAtPx: 0 };
  for (let round = 0; round < 3; round++) line = straight(near(steps, line.at, line.slope)) ?? line;
  const seen = new Set(near(steps, line.at, line.slope).map(({ s }) => s));
  return { ...line, share: seen.size / STEPS_ALONG };
}

const near = (steps: readonly Step[], at: number, slope: number) =>
  steps.filter(({ s, t }) => Math.abs(t - at - slope * s) < NEAR_PX);

function supportOf(steps: readonly Step[], at: number, slope: number): number {
  let sum = 0;
  for (const { s, t, rise } of steps) if (Math.abs(t - at - slope * s) < NEAR_PX) sum += Math.min(rise, 40);
  return sum;
}

function straight(steps: readonly Step[]): { at: number; slope: number; uAtPx: number } | null {
  const n = steps.length;
  if (n < 10) return null;
  const mean = (of: (step: Step) => number) => steps.reduce((sum, step) => sum + of(step), 0) / n;
  const [ms, mt] = [mean(({ s }) => s), mean(({ t }) => t)];
  const spread = mean(({ s }) => (s - ms) ** 2);
  const slope = mean(({ s, t }) => (s - ms) * (t - mt)) / spread;
  const at = mt - slope * ms;
  const rms = Math.sqrt(mean(({ s, t }) => (t - at - slope * s) ** 2));
  return { at, slope, uAtPx: rms / Math.sqrt(n) };
}
