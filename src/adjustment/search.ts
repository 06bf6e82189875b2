/**
 * The search for the lowest minimum, from several starts.
 *
 * Model    each camera pose alone first: from every closed-form start a first look, the best few a short run, then the mirrored
 *          tilts of the best; the likeliest combinations of these minima together a short run; the best few to the end. The
 *          thorough search tries every pair of starts together as well.
 * Assumes  a quick search finds the right minimum where it ends in an acceptable chi-square; where it does not, the thorough
 *          one keeps more of everything (adjust decides which).
 */
import type { Mat3 } from '../basics/rotation.ts';
import type { Equations } from './equations.ts';
import type { Layout } from './layout.ts';
import { type FitOptions, type Fitted, FULL_FIT, levenbergMarquardt } from './levenberg-marquardt.ts';
import { linearise } from './linearise.ts';
import { poseAt } from './pose.ts';
import { priorRows } from './prior-rows.ts';
import type { Problem, ProblemView } from './problem.ts';
import { settleBand } from './settle-band.ts';
import { type Start, startFor } from './start.ts';
import { mirroredRotations, startRotations } from './start-directions.ts';
import { distanceToObject } from './start-distance.ts';
import { joined, type Part, partOfPose } from './sub-problem.ts';

export type Solution = {
  readonly x: Float64Array;
  readonly start: Start;
  readonly fitted: Fitted;
};

export type Effort = {
  /** Starts of one pose that go on from the first look to a short run. */
  readonly lookedAt: number;
  /** Iterations of a short run. */
  readonly shortRun: number;
  /** Minima of one pose kept for joining: two by two mirrored tilts. */
  readonly keptOfPose: number;
  /** Combinations tried together. */
  readonly joined: number;
  /** Starts of all poses together that go on from the first look to a short run; 0: none are tried. */
  readonly paired: number;
  /** A combination or a short run whose chi-square is larger than the best one's by more than this is not followed. */
  readonly reach: number;
  /** Runs taken to the end. */
  readonly finished: number;
};

export const QUICK: Effort = {
  lookedAt: 2,
  shortRun: 8,
  keptOfPose: 4,
  joined: 3,
  paired: 0,
  reach: 150,
  finished: 2,
};
export const THOROUGH: Effort = {
  lookedAt: 15,
  shortRun: 40,
  keptOfPose: 6,
  joined: 16,
  paired: 16,
  reach: Number.POSITIVE_INFINITY,
  finished: 6,
};

/** Start rotations of one pose that are paired: with a clamp band its own six and three of the grid, else the grid. */
const PAIRED_OF_POSE = 9;
const FIRST_LOOK: FitOptions = { maxIterations: 2, tolerance: 0.1 };

/** Minima found, lowest chi-square first; empty where no start or no run came to an end. */
export function minima(problem: Problem, layout: Layout, effort: Effort): readonly Solution[] {
  const short =
    problem.poseCount === 1
      ? minimaOfPose(partOfPose(problem, 0), problem, effort)
      : [...joinedMinima(problem, layout, effort), ...pairedMinima(problem, layout, effort)].sort(
          byChiSquare,
        );
  const lowest = short[0]?.fitted.chiSquare ?? 0;
  const ends = distinct(short, layout)
    .slice(0, effort.finished)
    .filter(({ fitted }) => fitted.chiSquare <= lowest + effort.reach)
    .map((solution) => rebased(layout, solution))
    .map((start) => run(problem, layout, start, start.x, FULL_FIT))
    .filter(({ fitted }) => fitted.converged);
  return together(layout, ends);
}

/** Minima of several searches, lowest chi-square first, each once. */
export function together(layout: Layout, found: readonly Solution[]): readonly Solution[] {
  return distinct([...found].sort(byChiSquare), layout);
}

function joinedMinima(problem: Problem, layout: Layout, effort: Effort): readonly Solution[] {
  let combinations: readonly (readonly PoseSolution[])[] = [[]];
  for (let pose = 0; pose < problem.poseCount; pose++) {
    const part = partOfPose(problem, pose);
    const ofPose = minimaOfPose(part, problem, effort).slice(0, effort.keptOfPose);
    combinations = combinations.flatMap((before) =>
      ofPose.map((solution) => [...before, { ...solution, part }]),
    );
  }
  const chiSquareOf = (parts: readonly PoseSolution[]) =>
    parts.reduce((sum, s) => sum + s.fitted.chiSquare, 0);
  const sorted = [...combinations].sort((a, b) => chiSquareOf(a) - chiSquareOf(b));
  const lowest = chiSquareOf(sorted[0] ?? []);
  return sorted
    .slice(0, effort.joined)
    .filter((parts) => chiSquareOf(parts) <= lowest + effort.reach)
    .map((parts) => {
      const start = joined(problem, layout, parts);
      return run(problem, layout, start, start.x, shortFit(effort));
    })
    .sort(byChiSquare);
}

/**
 * Starts of all poses together, every start rotation of the first with every one of the others: one picture alone may hold only
 * tilts that all together refute.
 */
function pairedMinima(problem: Problem, layout: Layout, effort: Effort): readonly Solution[] {
  if (effort.paired === 0) return [];
  const ofPose = Array.from({ length: problem.poseCount }, (_, pose) =>
    startRotations(problem, problem.views.find((view) => view.pose === pose) as ProblemView).slice(
      0,
      PAIRED_OF_POSE,
    ),
  );
  const [first = [], ...others] = ofPose;
  const sets = first.flatMap((rotation) =>
    [...(others[0] ?? []).keys()].map((k) => [rotation, ...others.map((of) => of[k] ?? rotation)]),
  );
  return sets
    .flatMap((rotations) => {
      const distances = problem.views.map(
        (view, i) => distanceToObject(problem, rotations[view.pose] as Mat3)?.[i] ?? Number.NaN,
      );
      return startFor(problem, layout, rotations, distances) ?? [];
    })
    .map((start) => run(problem, layout, start, start.x, FIRST_LOOK))
    .sort(byChiSquare)
    .slice(0, effort.paired)
    .map((s) => run(problem, layout, s.start, s.x, shortFit(effort)));
}

type PoseSolution = Solution & { readonly part: Part };

function minimaOfPose(part: Part, whole: Problem, effort: Effort): readonly Solution[] {
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
    .slice(0, effort.lookedAt)
    .map((s) => run(part.problem, part.layout, s.start, s.x, shortFit(effort)))
    .sort(byChiSquare);
  const best = first[0];
  if (!best) return [];
  const { rotation } = poseAt(best.x, part.layout.poses[0] as number, best.start.rotations[0] as Mat3);
  const mirrored = mirroredRotations(part.problem, view, rotation)
    .flatMap(startAt)
    .map((start) => look(start, shortFit(effort)));
  return distinct([...first, ...mirrored].sort(byChiSquare), part.layout);
}

function shortFit(effort: Effort): FitOptions {
  return { maxIterations: effort.shortRun, tolerance: 0.05 };
}

function run(
  problem: Problem,
  layout: Layout,
  start: Start,
  from: Float64Array,
  options: FitOptions,
): Solution {
  const priors = priorRows(problem, layout, start.x);
  const evaluate = (x: Float64Array, spare?: Equations) => {
    settleBand(x, problem, layout, start);
    return linearise(x, problem, layout, start, priors, spare).equations;
  };
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
