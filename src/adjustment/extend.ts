/**
 * From the adjustment of the core views to one of all: side views are frames of the same clip, seen from places near by.
 *
 * Model    what the core found is the start; a side view's camera starts where that of the core view of its state stood. Each minimum
 *          of the core is followed: more views may refute it, or tell which of two was right.
 * Assumes  a side view shows what the core knows (tie points, followed marks), so that its camera finds its own place.
 */
import type { Mat3 } from '../basics/rotation.ts';
import { CAMERA_UNKNOWNS } from './camera.ts';
import { type Layout, layoutOf } from './layout.ts';
import { POSE_UNKNOWNS } from './pose.ts';
import type { Problem } from './problem.ts';
import { rotationsOf, run, runToEnd, type Solution } from './run.ts';
import type { Start } from './start.ts';
import { startTies } from './start-ties.ts';
import { TAPE_EDGE_UNKNOWNS } from './tape-edge.ts';
import { TAPE_UNKNOWNS } from './tape-point.ts';

/** Near enough to tell marks that are far off: ended sooner, in a slow valley, marks that are right were left out. */
const NEARLY = { maxIterations: 300, tolerance: 0.002 };
/** Of chi-square: minima of the core farther above the lowest are not followed. */
const WORTH_FOLLOWING = 40;

/** The problem without its side views; null where it has none. */
export function coreOf(problem: Problem): Problem | null {
  const views = problem.views.filter(({ isSide }) => !isSide);
  if (views.length === problem.views.length) return null;
  return { ...problem, views, poseCount: 1 + Math.max(...views.map(({ pose }) => pose)) };
}

/** The minima of all views that lie beside the core's. */
export function extended(
  problem: Problem,
  layout: Layout,
  core: Problem,
  ofCore: readonly Solution[],
  toEnd = true,
): readonly Solution[] {
  const lowest = ofCore[0]?.fitted.chiSquare ?? 0;
  return ofCore
    .filter(({ fitted }) => fitted.chiSquare < lowest + WORTH_FOLLOWING)
    .map((solution) => startFrom(problem, layout, core, solution))
    .map((start) =>
      toEnd ? runToEnd(problem, layout, { x: start.x, start }) : run(problem, layout, start, start.x, NEARLY),
    )
    .filter(({ fitted }) => Number.isFinite(fitted.chiSquare) && (fitted.converged || !toEnd));
}

/** Core views come first, so that their indexes are the same in both problems. */
function startFrom(problem: Problem, layout: Layout, core: Problem, solution: Solution): Start {
  const x = new Float64Array(layout.size);
  const coreLayout = layoutOf(core);
  const ofCore = rotationsOf(coreLayout, solution);
  const standing = layout.poses.map((_at, pose) => poseLike(problem, core, pose));
  const rotations = standing.map((pose) => ofCore[pose] as Mat3);
  for (const [pose, at] of layout.poses.entries()) {
    const from = coreLayout.poses[standing[pose] as number] as number;
    x.set(solution.x.subarray(from + 3, from + POSE_UNKNOWNS), at + 3);
  }
  startTies(problem, layout, x, rotations);
  copyThings(coreLayout, solution.x, layout, x);
  return { x, rotations };
}

/** The pose itself where the core has it, else that of the first core view of its state. */
function poseLike(problem: Problem, core: Problem, pose: number): number {
  if (pose < core.poseCount) return pose;
  const state = problem.views.find((view) => view.pose === pose)?.state;
  return core.views.find((view) => view.state === state)?.pose ?? 0;
}

/** All but the poses. A hold that a side view shares with the core is the core's own. */
function copyThings(from: Layout, source: Float64Array, to: Layout, target: Float64Array): void {
  const copy = (a: number | null | undefined, b: number | null | undefined, count: number): void => {
    if (typeof a === 'number' && typeof b === 'number') target.set(source.subarray(a, a + count), b);
  };
  for (const [i, at] of from.cameras.entries()) copy(at, to.cameras[i], CAMERA_UNKNOWNS);
  for (const [state, at] of Object.entries(from.pins)) copy(at, to.pins[state as keyof Layout['pins']], 2);
  copy(from.pinDepth, to.pinDepth, 1);
  copy(from.faceDepth, to.faceDepth, 1);
  copy(from.rodInner, to.rodInner, 1);
  copy(from.camshaft, to.camshaft, 4);
  copy(from.tapeSlack, to.tapeSlack, 1);
  for (const [i, at] of from.tapes.entries()) copy(at, to.tapes[i], TAPE_UNKNOWNS);
  for (const [i, at] of from.tapeEdges.entries()) copy(at, to.tapeEdges[i], TAPE_EDGE_UNKNOWNS);
  copy(from.targetScale, to.targetScale, 1);
  for (const [i, at] of from.targets.entries()) copy(at, to.targets[i], 6);
  copy(from.band, to.band, 2);
  copy(from.distance, to.distance, 1);
  for (const [i, at] of from.distances.entries()) copy(at, to.distances[i], 5);
  for (const [id, at] of from.nuisance) copy(at, to.nuisance.get(id), 1);
  for (const [tie, at] of from.ties) copy(at, to.ties.get(tie), 3);
  for (const [seed, at] of from.offsets) copy(at, to.offsets.get(seed), 2);
}
