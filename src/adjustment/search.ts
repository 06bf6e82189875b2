/**
 * The search for the lowest minimum, from several starts.
 *
 * Model    each camera pose alone first (pose-search.ts); the likeliest combinations of these minima together a short run; the best
 *          few to the end. The thorough search tries every pair of starts together as well.
 * Assumes  a quick search finds the right minimum where it ends in an acceptable chi-square; where it does not, the thorough
 *          one keeps more of everything (adjust decides which).
 */
import type { Mat3 } from '../basics/rotation.ts';
import { distinct } from './distinct.ts';
import type { Effort } from './effort.ts';
import type { Layout } from './layout.ts';
import { FIRST_LOOK, minimaOfPose, type PoseSolution, shortFit } from './pose-search.ts';
import type { Problem, ProblemView } from './problem.ts';
import { byChiSquare, rebased, rotationsOf, run, runToEnd, type Solution } from './run.ts';
import { startFor } from './start.ts';
import { startRotations } from './start-directions.ts';
import { distanceToObject } from './start-distance.ts';
import { joined, partOfPose } from './sub-problem.ts';
import { turnedDistances } from './turned-distance.ts';

/** Start rotations of one pose that are paired: what its target and its clamp band tell, and of the grid what is left of nine. */
const PAIRED_OF_POSE = 9;

/** Farther above the best a minimum has no share worth finding: exp(-10 / 2) is less than 1 %. */
const RIVALS = 10;

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
    .map((solution) => runToEnd(problem, layout, solution))
    .filter((solution) => isSound(problem, layout, solution));
  const found = together(layout, ends);
  return together(layout, [...found, ...otherTilts(problem, layout, found, effort)]);
}

/** From the best minimum, each known distance turned to its other tilt: what is lower is followed. */
function otherTilts(
  problem: Problem,
  layout: Layout,
  [best]: readonly Solution[],
  effort: Effort,
): readonly Solution[] {
  if (!best || !problem.references.distance) return [];
  return turnedDistances(problem, layout, rebased(layout, best))
    .map((start) => run(problem, layout, start, start.x, shortFit(effort)))
    .filter(({ fitted }) => fitted.chiSquare < best.fitted.chiSquare + RIVALS)
    .map((solution) => runToEnd(problem, layout, solution))
    .filter((solution) => isSound(problem, layout, solution));
}

/** Minima of several searches, lowest chi-square first, each once. */
export function together(layout: Layout, found: readonly Solution[]): readonly Solution[] {
  return distinct([...found].sort(byChiSquare), layout);
}

/** Depths are counted from the side that the pictures show: a camera behind it belongs to no brake. */
function isSound(problem: Problem, layout: Layout, solution: Solution): boolean {
  const isFromTheFront = rotationsOf(layout, solution).every((rotation) => problem.hand * rotation[8] > 0);
  return solution.fitted.converged && isFromTheFront;
}

function joinedMinima(problem: Problem, layout: Layout, effort: Effort): readonly Solution[] {
  let combinations: readonly (readonly PoseSolution[])[] = [[]];
  for (let pose = 0; pose < problem.poseCount; pose++) {
    const part = partOfPose(problem, pose);
    const ofPose = minimaOfPose(part, problem, effort).slice(0, effort.keptOfPose);
    combinations = combinations.flatMap((before) => ofPose.map((solution) => [...before, solution]));
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
