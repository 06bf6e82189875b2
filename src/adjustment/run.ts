/** One fit of a problem from one start: short, or to the end. */
import type { Mat3 } from '../basics/rotation.ts';
import type { Equations } from './equations.ts';
import type { Layout } from './layout.ts';
import { type FitOptions, type Fitted, FULL_FIT, levenbergMarquardt } from './levenberg-marquardt.ts';
import { linearise } from './linearise.ts';
import { poseAt } from './pose.ts';
import { priorRows } from './prior-rows.ts';
import type { Problem } from './problem.ts';
import { MOST_RAD, settleBand } from './settle-band.ts';
import type { Start } from './start.ts';
import { unfoldBand } from './unfold-band.ts';

export type Solution = {
  readonly x: Float64Array;
  readonly start: Start;
  readonly fitted: Fitted;
};

/** Where a fit is, or may begin. */
export type Place = Pick<Solution, 'x' | 'start'>;

const NEAR_HALF_RAD = Math.PI / 2;
const MOST_UNFOLDINGS = 3;
/** Fall of chi-square at which it is worth going on. */
const WORTH_UNFOLDING = 0.1;

export function run(
  problem: Problem,
  layout: Layout,
  start: Start,
  from: Float64Array,
  options: FitOptions,
): Solution {
  const priors = priorRows(problem, layout, start.x);
  const evaluate = (x: Float64Array, spare?: Equations) => {
    settleBand(x, problem, layout, start);
    return linearise(x, problem, layout, start, priors, spare);
  };
  const fitted = levenbergMarquardt(evaluate, new Float64Array(from), options);
  return { x: fitted.x, start, fitted };
}

/** From where a shorter run came to, with every rim mark on the half that faces the camera; marks that still end on the wrong part of
 * the rim are taken to where they belong, and it goes on. */
export function runToEnd(problem: Problem, layout: Layout, from: Place): Solution {
  let start = rebased(layout, from);
  unfoldBand(start.x, problem, layout, start, NEAR_HALF_RAD);
  let best = run(problem, layout, start, start.x, FULL_FIT);
  for (let k = 0; k < MOST_UNFOLDINGS; k++) {
    start = rebased(layout, best);
    if (!(unfoldBand(start.x, problem, layout, start, MOST_RAD) > WORTH_UNFOLDING)) break;
    const next = run(problem, layout, start, start.x, FULL_FIT);
    if (!(next.fitted.chiSquare < best.fitted.chiSquare)) break;
    best = next;
  }
  return best;
}

/** The solution as a start: its rotations become the fixed part and its priors are centred on it. */
export function rebased(layout: Layout, { x, start }: Place): Start {
  const from = new Float64Array(x);
  for (const at of layout.poses) from.fill(0, at, at + 3);
  return { x: from, rotations: rotationsOf(layout, { x, start }) };
}

export function rotationsOf(layout: Layout, { x, start }: Place): readonly Mat3[] {
  return layout.poses.map((at, i) => poseAt(x, at, start.rotations[i] as Mat3).rotation);
}

export function byChiSquare(a: Solution, b: Solution): number {
  return a.fitted.chiSquare - b.fitted.chiSquare;
}
