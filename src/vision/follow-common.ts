/**
 * The motion that most of what stands still has in common from one picture to the next; what is near the chamber counts most.
 *
 * Model    x' = a x - b y + c, y' = b x + a y + d; of pairs of places drawn at random the motion that most places, by weight, agree
 *          with, then least squares over those
 * Assumes  parallax of what weighs most is within the tolerance
 * Fails    null where less than half of the weight agrees
 * Source   random sample consensus: Fischler, Bolles, Comm. ACM 24 (1981) 381-395 (from memory)
 */
import { drawFrom } from '../basics/random.ts';
import type { PatchMap } from './fit-patch.ts';
import { lengthOf, type Point } from './point.ts';

export type Motion = { readonly a: number; readonly b: number; readonly c: number; readonly d: number };
export type Moved = { readonly from: Point; readonly to: Point };
export type Weighed = Moved & { readonly weight: number };

const DRAWS = 80;
const LEAST_AGREEING = 4;
const LEAST_SHARE = 0.5;

export function movedBy({ a, b, c, d }: Motion, [x, y]: Point): Point {
  return [a * x - b * y + c, b * x + a * y + d];
}

export const stepsOf = ({ a, b }: Motion): PatchMap['steps'] => [a, -b, b, a];

export function commonMotion(pairs: readonly Weighed[], tolerancePx: number): Motion | null {
  if (pairs.length < LEAST_AGREEING) return null;
  const draw = drawFrom(1);
  const one = () => pairs[Math.min(pairs.length - 1, Math.floor(draw.uniform(0, pairs.length)))] as Weighed;
  const agree = (motion: Motion) => pairs.filter((pair) => agrees(motion, pair, tolerancePx));
  const all = weightOf(pairs);
  let best: Motion | null = null;
  let most = 0;
  for (let i = 0; i < DRAWS && most <= 0.9 * all; i++) {
    const motion = similarity([one(), one()]);
    if (!motion) continue;
    let weight = 0;
    for (const pair of pairs) if (agrees(motion, pair, tolerancePx)) weight += pair.weight;
    if (weight > most) {
      best = motion;
      most = weight;
    }
  }
  const agreeing = best ? agree(best) : [];
  if (agreeing.length < LEAST_AGREEING || most < LEAST_SHARE * all) return null;
  const rough = similarity(agreeing);
  return rough && similarity(agree(rough));
}

const weightOf = (pairs: readonly Weighed[]) => pairs.reduce((sum, { weight }) => sum + weight, 0);

/** Of tolerances the smallest in which there is one: a wide one takes near and far together, which turn and grow as neither does. */
export function closestMotion(pairs: readonly Weighed[], tolerancesPx: readonly number[]): Motion | null {
  for (const tolerancePx of tolerancesPx) {
    const motion = commonMotion(pairs, tolerancePx);
    if (motion) return motion;
  }
  return null;
}

function agrees({ a, b, c, d }: Motion, { from, to }: Moved, tolerancePx: number): boolean {
  const x = from[0];
  const y = from[1];
  return lengthOf(a * x - b * y + c - to[0], b * x + a * y + d - to[1]) < tolerancePx;
}

export function similarity(pairs: readonly Moved[]): Motion | null {
  const n = pairs.length;
  let fx = 0;
  let fy = 0;
  let tx = 0;
  let ty = 0;
  for (const { from, to } of pairs) {
    fx += from[0] / n;
    fy += from[1] / n;
    tx += to[0] / n;
    ty += to[1] / n;
  }
  let along = 0;
  let across = 0;
  let square = 0;
  for (const { from, to } of pairs) {
    const x = from[0] - fx;
    const y = from[1] - fy;
    const u = to[0] - tx;
    const v = to[1] - ty;
    along += x * u + y * v;
    across += x * v - y * u;
    square += x * x + y * y;
  }
  if (!(square > n)) return null;
  const a = along / square;
  const b = across / square;
  return { a, b, c: tx - a * fx + b * fy, d: ty - b * fx - a * fy };
}
