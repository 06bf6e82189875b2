/**
 * The adjustment: all marks together, from several starts, to the geometry with its covariance.
 *
 * Model    least squares from a grid of assumed directions of view; a short run from each, the best few to the end; the
 *          lowest chi-square is the answer. Another minimum nearly as low, at another place, is kept as the rival.
 * Assumes  every view has its face and pin marks and some view a scale (checked before).
 * Fails    adjustment/no-start: no assumed direction fits the marks; adjustment/no-minimum: no run came to an end;
 *          adjustment/singular: an unknown that nothing holds.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Mat3 } from '../basics/rotation.ts';
import { choleskyFactor, lowerInverse } from '../basics/symmetric.ts';
import { type Layout, layoutOf } from './layout.ts';
import { type FitOptions, type Fitted, FULL_FIT, levenbergMarquardt } from './levenberg-marquardt.ts';
import { linearise, type MarkRows } from './linearise.ts';
import { poseAt } from './pose.ts';
import { priorRows } from './prior-rows.ts';
import type { Problem, ProblemView } from './problem.ts';
import { type Start, startFor } from './start.ts';
import { mirroredRotations, startRotations } from './start-directions.ts';
import { distanceToObject } from './start-distance.ts';
import { joined, type Part, partOfPose } from './sub-problem.ts';

export type Solution = {
  readonly x: Float64Array;
  readonly start: Start;
  readonly fitted: Fitted;
};

export type Adjustment = {
  readonly problem: Problem;
  readonly layout: Layout;
  readonly best: Solution;
  /** Other minima, each with how much larger its chi-square is; lowest first. */
  readonly rivals: readonly { readonly solution: Solution; readonly excess: number }[];
  readonly markRows: readonly MarkRows[];
  /** Inverse of the Cholesky factor of J^T J: quadratic forms in the covariance come from it. */
  readonly lowerInverse: Float64Array;
};

export type AdjustmentFailure = {
  readonly code: 'adjustment/no-start' | 'adjustment/no-minimum' | 'adjustment/singular';
};

const FIRST_LOOK: FitOptions = { maxIterations: 4, tolerance: 0.1 };
const LOOKED_AT = 4;
const SHORT_FIT: FitOptions = { maxIterations: 20, tolerance: 0.05 };
/** Minima of one pose kept for joining: the two of a circle's mirrored tilt, and one more. */
const KEPT_OF_POSE = 4;
const JOINED = 6;
const FINISHED = 3;
/** Minima farther apart than this in chi-square do not rival each other: exp(-20 / 2) is a chance of 1 in 20,000. */
const RIVAL_EXCESS = 20;

export function adjust(problem: Problem): Result<Adjustment, AdjustmentFailure> {
  const layout = layoutOf(problem);
  const short =
    problem.poseCount === 1 ? minimaOfPose(partOfPose(problem, 0), problem) : joinedMinima(problem, layout);
  if (short.length === 0) return fail({ code: 'adjustment/no-start' });
  const ends = distinct(short, layout)
    .slice(0, FINISHED)
    .map((s) => rebased(layout, s))
    .map((start) => run(problem, layout, start, start.x, FULL_FIT))
    .filter((s) => s.fitted.converged)
    .sort(byChiSquare);
  const best = ends[0];
  if (!best) return fail({ code: 'adjustment/no-minimum' });
  const lower = choleskyFactor(best.fitted.equations.normal().matrix, layout.size);
  if (!lower) return fail({ code: 'adjustment/singular' });
  const rivals = distinct(ends, layout)
    .slice(1)
    .map((solution) => ({ solution, excess: solution.fitted.chiSquare - best.fitted.chiSquare }))
    .filter(({ excess }) => excess < RIVAL_EXCESS);
  const priors = priorRows(problem, layout, best.start);
  const { markRows } = linearise(best.x, problem, layout, best.start, priors);
  return ok({ problem, layout, best, rivals, markRows, lowerInverse: lowerInverse(lower, layout.size) });
}

/** Each pose alone first, from every direction of the grid; then the likeliest combinations of their minima together. */
function joinedMinima(problem: Problem, layout: Layout): readonly Solution[] {
  let combinations: readonly (readonly PoseSolution[])[] = [[]];
  for (let pose = 0; pose < problem.poseCount; pose++) {
    const part = partOfPose(problem, pose);
    const minima = minimaOfPose(part, problem).slice(0, KEPT_OF_POSE);
    combinations = combinations.flatMap((before) =>
      minima.map((solution) => [...before, { ...solution, part }]),
    );
  }
  const chiSquareOf = (parts: readonly PoseSolution[]) =>
    parts.reduce((sum, s) => sum + s.fitted.chiSquare, 0);
  return [...combinations]
    .sort((a, b) => chiSquareOf(a) - chiSquareOf(b))
    .slice(0, JOINED)
    .map((parts) => {
      const start = joined(layout, parts);
      return run(problem, layout, start, start.x, SHORT_FIT);
    })
    .sort(byChiSquare);
}

type PoseSolution = Solution & { readonly part: Part };

/** From the closed-form starts the best few; then the mirrored tilts of the best of these. */
function minimaOfPose(part: Part, whole: Problem): readonly Solution[] {
  const view = part.problem.views[0] as ProblemView;
  const startAt = (rotation: Mat3): readonly Start[] => {
    const distances = distanceToObject(whole, rotation);
    if (!distances) return [];
    const own = part.viewIndexes.map((i) => distances[i] as number);
    const start = startFor(part.problem, part.layout, [rotation], own);
    return start ? [start] : [];
  };
  const look = (start: Start, options: FitOptions) => run(part.problem, part.layout, start, start.x, options);
  const first = startRotations(part.problem, view)
    .flatMap(startAt)
    .map((start) => look(start, FIRST_LOOK))
    .sort(byChiSquare)
    .slice(0, LOOKED_AT)
    .map((s) => run(part.problem, part.layout, s.start, s.x, SHORT_FIT))
    .sort(byChiSquare);
  const best = first[0];
  if (!best) return [];
  const { rotation } = poseAt(best.x, part.layout.poses[0] as number, best.start.rotations[0] as Mat3);
  const mirrored = mirroredRotations(part.problem, view, rotation)
    .flatMap(startAt)
    .map((start) => look(start, SHORT_FIT));
  return distinct([...first, ...mirrored].sort(byChiSquare), part.layout);
}

function run(
  problem: Problem,
  layout: Layout,
  start: Start,
  from: Float64Array,
  options: FitOptions,
): Solution {
  const priors = priorRows(problem, layout, start);
  const evaluate = (x: Float64Array) => linearise(x, problem, layout, start, priors).equations;
  const fitted = levenbergMarquardt(evaluate, new Float64Array(from), options);
  return { x: fitted.x, start, fitted };
}

/** The solution as a start: its rotations become the fixed part and its priors are centred on it. */
function rebased(layout: Layout, { x, start }: Solution): Start {
  const from = new Float64Array(x);
  const rotations = layout.poses.map((at, i) => poseAt(x, at, start.rotations[i] as Mat3).rotation);
  for (const at of layout.poses) from.fill(0, at, at + 3);
  return { x: from, rotations };
}

function byChiSquare(a: Solution, b: Solution): number {
  return a.fitted.chiSquare - b.fitted.chiSquare;
}

/** Runs from different starts that met are one minimum: told by where they put the pins and the pin's depth. */
const SAME_PLACE_MM = 0.5;

function distinct(sorted: readonly Solution[], layout: Layout): readonly Solution[] {
  const places = [...Object.values(layout.pins).flatMap((at) => [at, at + 1]), layout.pinDepth];
  const kept: Solution[] = [];
  for (const solution of sorted) {
    const met = kept.some((k) =>
      places.every((at) => Math.abs((k.x[at] as number) - (solution.x[at] as number)) < SAME_PLACE_MM),
    );
    if (!met) kept.push(solution);
  }
  return kept;
}
