/**
 * The distribution of one derived quantity where the covariance, which is linear, may not tell it.
 *
 * Model    density of q at s: exp(-chi2(s) / (2 F^2)) / sqrt(det N(s)), chi2 and N = J^T J of the least-squares solution with q held
 *          at s by one narrow equation; F the factor by which the marks' own scatter widens every uncertainty. Points of s
 *          every half standard uncertainty, outwards from each minimum until the density is gone.
 *          Expanded uncertainty: the half width about the value found that holds 95 % of the distribution.
 * Assumes  the other unknowns are near normal once q is held (Laplace's approximation).
 * Source   Tierney, Kadane: Accurate approximations for posterior moments and marginal densities, 1986 (from memory).
 */
import { roomForFactor, sparseFactor } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import type { Gradient } from './derived.ts';
import type { Equations } from './equations.ts';
import type { Layout } from './layout.ts';
import { type FitOptions, levenbergMarquardt } from './levenberg-marquardt.ts';
import { linearise } from './linearise.ts';
import { priorRows } from './prior-rows.ts';
import type { Solution } from './run.ts';
import { settleBand } from './settle-band.ts';

export type DerivedQuantity = (
  x: Float64Array,
  layout: Layout,
) => { readonly value: number; readonly gradient: Gradient };

export type Spread = {
  readonly quantity: DerivedQuantity;
  /** Standard uncertainty of the quantity by the covariance, without the factor below. */
  readonly u: number;
  readonly inflation: number;
};

export type DensityPoint = { readonly value: number; readonly logDensity: number };

const STEP_U = 0.5;
const REACH_U = 12;
/** A density this far down (natural logarithm) has ended: 1 in 1,000. */
const GONE = 7;
const HOLD_U = 1e-3;
const HELD_FIT: FitOptions = { maxIterations: 40, tolerance: 1e-2 };

/** Lowest value first; every minimum that rivals the best adds the part of the distribution that lies outside the others'. */
export function distribution(adjustment: Adjustment, spread: Spread): readonly DensityPoint[] {
  const points: DensityPoint[] = [];
  for (const solution of [adjustment.best, ...adjustment.rivals.map((rival) => rival.solution)]) {
    const centre = spread.quantity(solution.x, adjustment.layout).value;
    const values = points.map(({ value }) => value);
    if (points.length > 0 && centre > Math.min(...values) && centre < Math.max(...values)) continue;
    points.push(...aboutMinimum(adjustment, solution, spread));
  }
  return points.sort((a, b) => a.value - b.value);
}

function aboutMinimum(adjustment: Adjustment, solution: Solution, spread: Spread): readonly DensityPoint[] {
  const centre = spread.quantity(solution.x, adjustment.layout).value;
  const density = densityAbout(adjustment, solution, spread);
  const top = density(0);
  const points = [{ value: centre, logDensity: top }];
  for (const side of [-1, 1]) {
    for (let k = STEP_U; k <= REACH_U; k += STEP_U) {
      const logDensity = density(side * k);
      points.push({ value: centre + side * k * spread.u, logDensity });
      if (!(logDensity > top - GONE)) break;
    }
  }
  return points;
}

/** The logarithm of the density k u beside a minimum; each call starts from the solution of the one before on its side. */
function densityAbout(
  { problem, layout }: Adjustment,
  { x: found, start }: Solution,
  { quantity, u, inflation }: Spread,
): (k: number) => number {
  const priors = priorRows(problem, layout, start.x);
  const centre = quantity(found, layout).value;
  const weight = 1 / (HOLD_U * u);
  const room = roomForFactor(layout.size);
  const lastOf = new Map<number, Float64Array>();
  return (k) => {
    const evaluate = (x: Float64Array, spare?: Equations) => {
      settleBand(x, problem, layout, start);
      const equations = linearise(x, problem, layout, start, priors, spare);
      const { value, gradient } = quantity(x, layout);
      for (const [index, d] of merged(gradient)) equations.add(index, weight * d);
      equations.close(weight * (value - centre - k * u), 'marks');
      return equations;
    };
    const from = new Float64Array(lastOf.get(Math.sign(k)) ?? found);
    const held = levenbergMarquardt(evaluate, from, HELD_FIT);
    const factor = sparseFactor(held.equations.normal().matrix, layout.size, room);
    if (!factor) return Number.NEGATIVE_INFINITY;
    lastOf.set(Math.sign(k), held.x);
    const logRoot = factor.diagonal.reduce((sum, pivot) => sum + Math.log(pivot), 0);
    return -held.chiSquare / (2 * inflation ** 2) - logRoot;
  };
}

/** An equation names an unknown once. */
function merged(gradient: Gradient): ReadonlyMap<number, number> {
  const byIndex = new Map<number, number>();
  for (const { index, d } of gradient) byIndex.set(index, (byIndex.get(index) ?? 0) + d);
  return byIndex;
}

/** Half width about the value that holds 95 % of the distribution; trapezoids between the points. */
export function halfWidth95(points: readonly DensityPoint[], value: number): number {
  const top = Math.max(...points.map(({ logDensity }) => logDensity));
  const pieces = points.slice(1).map((to, i) => {
    const from = points[i] as DensityPoint;
    const mean = (Math.exp(from.logDensity - top) + Math.exp(to.logDensity - top)) / 2;
    return { from: from.value, to: to.value, mean };
  });
  const massWithin = (half: number): number =>
    pieces.reduce((sum, { from, to, mean }) => {
      const inside = Math.min(to, value + half) - Math.max(from, value - half);
      return sum + mean * Math.max(0, inside);
    }, 0);
  let [low, high] = [0, Math.max(...points.map((point) => Math.abs(point.value - value)))];
  const wanted = 0.95 * massWithin(high);
  for (let halving = 0; halving < 40; halving++) {
    const half = (low + high) / 2;
    if (massWithin(half) < wanted) low = half;
    else high = half;
  }
  return high;
}
