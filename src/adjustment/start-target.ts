/**
 * Start values of the printed target: its corners' crossings with the plane at its usual depth, and the turn and shift of the
 * card that come nearest to them.
 *
 * Model    in the frame (x, h y) of that plane: p = o + s R(a) (u, v), least squares in o and a with the scale s of the print:
 *          a = atan2(sum u x p, sum u . p) about the centroids.
 * Fails    left flat at the usual place where no corner's ray meets the plane.
 */
import type { Mat3, Vec3 } from '../basics/rotation.ts';
import { CHECK_LINE_MM, targetCorner } from '../references/target-card.ts';
import type { Layout } from './layout.ts';
import * as known from './priors.ts';
import { type Problem, type ProblemView, zFromDepth } from './problem.ts';
import { normalisedRay, planeCrossing } from './start-rays.ts';

export function startTarget(
  problem: Problem,
  layout: Layout,
  viewIndex: number,
  x: Float64Array,
  rotations: readonly Mat3[],
): void {
  const at = layout.targets[viewIndex];
  const { target } = problem.references;
  if (at === null || at === undefined || layout.targetScale === null || !target) return;
  const scale = target.checkMm / CHECK_LINE_MM;
  x[layout.targetScale] = scale;
  const pairs = cornersOnPlane(problem, layout, viewIndex, x, rotations);
  const mean = (get: (pair: Pair) => number) =>
    pairs.reduce((sum, pair) => sum + get(pair), 0) / Math.max(pairs.length, 1);
  const [mu, mv, mx, my] = [mean((p) => p.u), mean((p) => p.v), mean((p) => p.x), mean((p) => p.y)];
  const crossed = mean((p) => (p.u - mu) * (p.y - my) - (p.v - mv) * (p.x - mx));
  const dotted = mean((p) => (p.u - mu) * (p.x - mx) + (p.v - mv) * (p.y - my));
  const angle = Math.atan2(crossed, dotted);
  const [c, s] = [scale * Math.cos(angle), scale * Math.sin(angle)];
  x.set([mx - (c * mu - s * mv), my - (s * mu + c * mv), known.TARGET_DEPTH[0], angle, 0, 0], at);
}

type Pair = { readonly u: number; readonly v: number; readonly x: number; readonly y: number };

function cornersOnPlane(
  problem: Problem,
  layout: Layout,
  viewIndex: number,
  x: Float64Array,
  rotations: readonly Mat3[],
): readonly Pair[] {
  const view = problem.views[viewIndex] as ProblemView;
  const camera = problem.cameras[view.camera] as Problem['cameras'][number];
  const at = (layout.poses[view.pose] as number) + 3;
  const pose = {
    rotation: rotations[view.pose] as Mat3,
    translation: [x[at] as number, x[at + 1] as number, x[at + 2] as number] as Vec3,
  };
  const z = zFromDepth(known.TARGET_DEPTH[0], problem.hand);
  return view.marks.flatMap((mark) => {
    if (mark.kind !== 'target-corner') return [];
    const corner = targetCorner(mark.marker, mark.corner);
    const crossing = planeCrossing(pose, normalisedRay(camera, mark), z);
    if (!corner || !crossing) return [];
    return [{ u: corner.uMm, v: corner.vMm, x: crossing.xMm, y: problem.hand * crossing.yMm }];
  });
}
