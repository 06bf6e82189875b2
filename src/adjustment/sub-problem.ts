/** The part of a problem that one camera pose sees, and the way back: joining solutions of the parts into a start for the whole. */

import { CAMERA_UNKNOWNS } from './camera.ts';
import { type Layout, layoutOf } from './layout.ts';
import { type Pose, poseAt } from './pose.ts';
import type { Problem } from './problem.ts';
import type { Start } from './start.ts';
import { startTies } from './start-ties.ts';
import { TAPE_EDGE_UNKNOWNS } from './tape-edge.ts';
import { TAPE_UNKNOWNS } from './tape-point.ts';

export type Part = {
  readonly problem: Problem;
  readonly layout: Layout;
  /** Index in the whole problem of each view of the part. */
  readonly viewIndexes: readonly number[];
};

export type PartSolution = { readonly part: Part; readonly x: Float64Array; readonly start: Start };

export function partOfPose(problem: Problem, pose: number): Part {
  const viewIndexes = [...problem.views.keys()].filter((i) => problem.views[i]?.pose === pose);
  const views = problem.views.filter((view) => view.pose === pose).map((view) => ({ ...view, pose: 0 }));
  const part: Problem = { ...problem, views, poseCount: 1 };
  return { problem: part, layout: layoutOf(part), viewIndexes };
}

/** Each pose and each view's own unknowns from its part; what is common to all from the mean over the parts that have it. */
export function joined(problem: Problem, layout: Layout, parts: readonly PartSolution[]): Start {
  const x = new Float64Array(layout.size);
  const copy = (from: Float64Array, source: number, target: number, count: number): void => {
    x.set(from.subarray(source, source + count), target);
  };
  const mean = (target: number | null, count: number, place: (l: Layout) => number | null): void => {
    const having = parts.filter(({ part }) => place(part.layout) !== null);
    if (target === null) return;
    for (let k = 0; k < count; k++) {
      const sum = having.reduce(
        (acc, { part, x: from }) => acc + (from[(place(part.layout) as number) + k] as number),
        0,
      );
      x[target + k] = sum / Math.max(having.length, 1);
    }
  };
  for (const [i, at] of layout.cameras.entries()) mean(at, CAMERA_UNKNOWNS, (l) => l.cameras[i] ?? null);
  mean(layout.pinDepth, 1, (l) => l.pinDepth);
  mean(layout.faceDepth, 1, (l) => l.faceDepth);
  mean(layout.rodInner, 1, (l) => l.rodInner);
  mean(layout.camshaft, 4, (l) => l.camshaft);
  mean(layout.tapeSlack, 1, (l) => l.tapeSlack);
  mean(layout.targetScale, 1, (l) => l.targetScale);
  mean(layout.band, 2, (l) => l.band);
  mean(layout.distance, 1, (l) => l.distance);
  const rotations = parts.map(({ part, x: from, start }, pose) => {
    const at = part.layout.poses[0] as number;
    copy(from, at + 3, (layout.poses[pose] as number) + 3, 3);
    return poseAt(from, at, start.rotations[0] as Pose['rotation']).rotation;
  });
  for (const { part, x: from } of parts) {
    for (const [state, at] of Object.entries(part.layout.pins))
      copy(from, at, layout.pins[state as keyof Layout['pins']] as number, 2);
    for (const [k, viewIndex] of part.viewIndexes.entries()) {
      const [tape, distance] = [part.layout.tapes[k], part.layout.distances[k]];
      if (typeof tape === 'number') copy(from, tape, layout.tapes[viewIndex] as number, TAPE_UNKNOWNS);
      const edge = part.layout.tapeEdges[k];
      if (typeof edge === 'number')
        copy(from, edge, layout.tapeEdges[viewIndex] as number, TAPE_EDGE_UNKNOWNS);
      const target = part.layout.targets[k];
      if (typeof target === 'number') copy(from, target, layout.targets[viewIndex] as number, 6);
      if (typeof distance === 'number') copy(from, distance, layout.distances[viewIndex] as number, 5);
    }
    for (const [id, at] of part.layout.nuisance) copy(from, at, layout.nuisance.get(id) as number, 1);
  }
  startTies(problem, layout, x, rotations);
  return { x, rotations };
}
