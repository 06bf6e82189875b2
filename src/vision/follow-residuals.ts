/**
 * A patch laid over a picture by a map: what is seen there, in which light, and what the residuals say.
 *
 * Model    I(p + A d) = a T(d) + b; weights of residuals e: 1 / (1 + (e / 4 s)^2)^2, s their robust spread: what does not belong to the
 *          part hardly counts. Covariance from the sums of weight x pull x residual over blocks of neighbours: alike as they are, a
 *          block is one witness.
 * Source   weights: Geman, McClure (1985) (from memory); sums over blocks as in cluster-robust covariance
 */
import { type Cutout, newCutout } from './follow-cutout.ts';
import type { Patch } from './follow-patch.ts';
import { SHAPE } from './follow-solver.ts';
import { lengthOf } from './point.ts';

/** In spreads of the residuals: beyond, a pixel hardly counts. */
const CUT = 4;
const LEAST_SPREAD = 0.7;

/** Buffers of one patch, filled anew in each step. */
export type FitRoom = {
  readonly cutout: Cutout;
  /** Where the patch is laid: its place (x, y), then how a step appears there (x by x, x by y, y by x, y by y). */
  readonly map: Float64Array;
  /** As the slopes are: shift (2), shape (2 x 2, in radii). */
  readonly step: Float64Array;
  readonly seen: Float32Array;
  readonly robust: Float32Array;
  readonly sums: Float64Array;
  readonly blockX: Float64Array;
  readonly blockY: Float64Array;
};

/** Samples beyond the patch's rim, for starts that are off and for parts that come nearer. */
const MARGIN_SAMPLES = 3;

export function roomFor({ radiusPx, stepPx, count, blockCount }: Patch): FitRoom {
  const side = 2 * (Math.ceil(radiusPx / stepPx) + MARGIN_SAMPLES) + 1;
  return {
    cutout: newCutout(side, side, stepPx),
    map: new Float64Array(SHAPE),
    step: new Float64Array(SHAPE),
    seen: new Float32Array(count),
    robust: new Float32Array(count),
    sums: new Float64Array(SHAPE),
    blockX: new Float64Array(blockCount),
    blockY: new Float64Array(blockCount),
  };
}

export function isWithin({ radiusPx }: Patch, { cutout, map }: FitRoom): boolean {
  const { leftPx, topPx, columns, rows, stepPx } = cutout;
  const x = (map[0] as number) - leftPx;
  const y = (map[1] as number) - topPx;
  const reachX = radiusPx * lengthOf(map[2] as number, map[3] as number);
  const reachY = radiusPx * lengthOf(map[4] as number, map[5] as number);
  return (
    x - reachX > 0.5 * stepPx &&
    y - reachY > 0.5 * stepPx &&
    x + reachX < (columns - 0.5) * stepPx &&
    y + reachY < (rows - 0.5) * stepPx
  );
}

export type Light = { readonly gain: number; readonly offset: number };

/** Fills what is seen; gain and offset by regression on the patch's levels, with the weights of the step before. */
export function lightOf(patch: Patch, { cutout, map, seen, robust }: FitRoom): Light | null {
  const { count, byX, byY, levels, weights } = patch;
  const { columns, values } = cutout;
  const scale = 1 / cutout.stepPx;
  const left = ((map[0] as number) - cutout.leftPx) * scale - 0.5;
  const top = ((map[1] as number) - cutout.topPx) * scale - 0.5;
  const xx = (map[2] as number) * scale;
  const xy = (map[3] as number) * scale;
  const yx = (map[4] as number) * scale;
  const yy = (map[5] as number) * scale;
  let s = 0;
  let st = 0;
  let stt = 0;
  let si = 0;
  let sit = 0;
  for (let i = 0; i < count; i++) {
    const dx = byX[i] as number;
    const dy = byY[i] as number;
    const px = left + xx * dx + xy * dy;
    const py = top + yx * dx + yy * dy;
    const column = px | 0;
    const row = py | 0;
    const u = px - column;
    const at = row * columns + column;
    const upper = values[at] as number;
    const lower = values[at + columns] as number;
    const above = upper + u * ((values[at + 1] as number) - upper);
    const below = lower + u * ((values[at + columns + 1] as number) - lower);
    const v = above + (py - row) * (below - above);
    seen[i] = v;
    const w = (weights[i] as number) * (robust[i] as number);
    const t = levels[i] as number;
    const wt = w * t;
    s += w;
    st += wt;
    stt += wt * t;
    si += w * v;
    sit += wt * v;
  }
  const gain = (sit - (st * si) / s) / (stt - (st * st) / s);
  return gain > 0.1 ? { gain, offset: (si - gain * st) / s } : null;
}

/** Fills the sums and the weights; the spread of the residuals comes back. spread 0: no weights yet. */
export function addUp(patch: Patch, room: FitRoom, { gain, offset }: Light, spread: number): number {
  const { count, levels, weights, slopes } = patch;
  const { seen, robust, sums } = room;
  const perLevel = 1 / gain;
  const cut = spread > 0 ? 1 / (CUT * spread) ** 2 : 0;
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let s5 = 0;
  let used = 0;
  let off = 0;
  let offUsed = 0;
  for (let i = 0, k = 0; i < count; i++, k += SHAPE) {
    const e = ((seen[i] as number) - offset) * perLevel - (levels[i] as number);
    const tame = 1 / (1 + e * e * cut);
    const r = tame * tame;
    robust[i] = r;
    const w = (weights[i] as number) * r;
    const we = w * e;
    used += w;
    const wt = (weights[i] as number) * tame;
    off += wt * Math.abs(e);
    offUsed += wt;
    s0 += we * (slopes[k] as number);
    s1 += we * (slopes[k + 1] as number);
    s2 += we * (slopes[k + 2] as number);
    s3 += we * (slopes[k + 3] as number);
    s4 += we * (slopes[k + 4] as number);
    s5 += we * (slopes[k + 5] as number);
  }
  const whole = patch.weightSum / used;
  sums[0] = s0 * whole;
  sums[1] = s1 * whole;
  sums[2] = s2 * whole;
  sums[3] = s3 * whole;
  sums[4] = s4 * whole;
  sums[5] = s5 * whole;
  return Math.max(LEAST_SPREAD, (1.25 * off) / offUsed);
}

type Cofactors = readonly [N, N, N, N, N, N, N, N, N, N, N, N];
type N = number;

export function quality(patch: Patch, room: FitRoom, { gain, offset }: Light, size: number) {
  const { count, levels, weights, slopes, blocks, blockCount, weightSum } = patch;
  const [x0, x1, x2, x3, x4, x5, , y1, y2, y3, y4, y5] = patch.solver.cofactors as unknown as Cofactors;
  const { seen, robust, blockX, blockY } = room;
  blockX.fill(0);
  blockY.fill(0);
  let used = 0;
  let st = 0;
  let stt = 0;
  let si = 0;
  let sii = 0;
  let sit = 0;
  for (let i = 0, k = 0; i < count; i++, k += SHAPE) {
    const w = weights[i] as number;
    const t = levels[i] as number;
    const v = seen[i] as number;
    st += w * t;
    stt += w * t * t;
    si += w * v;
    sii += w * v * v;
    sit += w * t * v;
    const wr = w * (robust[i] as number);
    const we = wr * ((v - offset) / gain - t);
    used += wr;
    const block = blocks[i] as number;
    const s0 = slopes[k] as number;
    const s1 = slopes[k + 1] as number;
    const s2 = slopes[k + 2] as number;
    const s3 = slopes[k + 3] as number;
    const s4 = slopes[k + 4] as number;
    const s5 = slopes[k + 5] as number;
    blockX[block] =
      (blockX[block] as number) + we * (x0 * s0 + x1 * s1 + x2 * s2 + x3 * s3 + x4 * s4 + x5 * s5);
    blockY[block] =
      (blockY[block] as number) + we * (x1 * s0 + y1 * s1 + y2 * s2 + y3 * s3 + y4 * s4 + y5 * s5);
  }
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let block = 0; block < blockCount; block++) {
    const bx = blockX[block] as number;
    const by = blockY[block] as number;
    xx += bx * bx;
    xy += bx * by;
    yy += by * by;
  }
  const widest = (xx + yy) / 2 + lengthOf((xx - yy) / 2, xy);
  const alike = sit - (st * si) / weightSum;
  return {
    sigmaPx: (Math.sqrt(widest * size) * weightSum) / used,
    likeness: alike / Math.sqrt((stt - (st * st) / weightSum) * (sii - (si * si) / weightSum)),
    share: used / weightSum,
  };
}
