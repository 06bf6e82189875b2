/**
 * The motion that most of what stands still has in common from one picture to the next.
 *
 * Model    x' = a x - b y + c, y' = b x + a y + d; of pairs of places drawn at random the motion that most places agree with, then
 *          least squares over those
 * Assumes  a short time between the pictures: parallax is within the tolerance
 * Fails    null where fewer than half agree
 * Source   random sample consensus: Fischler, Bolles, Comm. ACM 24 (1981) 381-395 (from memory)
 */
import { drawFrom } from '../basics/random.ts';
import type { Point } from './point.ts';

export type Motion = { readonly a: number; readonly b: number; readonly c: number; readonly d: number };
export type Moved = { readonly from: Point; readonly to: Point };

const DRAWS = 80;
const LEAST_AGREEING = 4;
const LEAST_SHARE = 0.5;

export function movedBy({ a, b, c, d }: Motion, [x, y]: Point): Point {
  return [a * x - b * y + c, b * x + a * y + d];
}

export function commonMotion(pairs: readonly Moved[], tolerancePx: number): Motion | null {
  if (pairs.length < LEAST_AGREEING) return null;
  const draw = drawFrom(1);
  const one = () => pairs[Math.min(pairs.length - 1, Math.floor(draw.uniform(0, pairs.length)))] as Moved;
  const agree = (motion: Motion) => pairs.filter((pair) => offBy(motion, pair) < tolerancePx);
  let best: readonly Moved[] = [];
  for (let i = 0; i < DRAWS; i++) {
    const motion = similarity([one(), one()]);
    const agreeing = motion ? agree(motion) : [];
    if (agreeing.length > best.length) best = agreeing;
    if (best.length > 0.9 * pairs.length) break;
  }
  if (best.length < Math.max(LEAST_AGREEING, LEAST_SHARE * pairs.length)) return null;
  const rough = similarity(best);
  return rough && similarity(agree(rough));
}

function offBy(motion: Motion, { from, to }: Moved): number {
  const [x, y] = movedBy(motion, from);
  return Math.hypot(x - to[0], y - to[1]);
}

export function similarity(pairs: readonly Moved[]): Motion | null {
  const n = pairs.length;
  let [fx, fy, tx, ty] = [0, 0, 0, 0];
  for (const { from, to } of pairs) {
    fx += from[0] / n;
    fy += from[1] / n;
    tx += to[0] / n;
    ty += to[1] / n;
  }
  let [along, across, square] = [0, 0, 0];
  for (const { from, to } of pairs) {
    const [x, y, u, v] = [from[0] - fx, from[1] - fy, to[0] - tx, to[1] - ty];
    along += x * u + y * v;
    across += x * v - y * u;
    square += x * x + y * y;
  }
  if (!(square > n)) return null;
  const [a, b] = [along / square, across / square];
  return { a, b, c: tx - a * fx + b * fy, d: ty - b * fx - a * fy };
}
