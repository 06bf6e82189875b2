/**
 * The minimum that a fit comes to from the truth of a simulated scene: a search that ends higher has missed one.
 *
 * Model    the engine's own start values for the true direction of view, place and focal length of each camera, then its own fit.
 * Assumes  nothing: the minimum need not be the lowest, since marks are off by chance and what is known beforehand pulls too.
 * Fails    null where the start is none, or where the fit does not end in front of the brake.
 */
import type { Layout } from '../../src/adjustment/layout.ts';
import { layoutOf } from '../../src/adjustment/layout.ts';
import type { Problem } from '../../src/adjustment/problem.ts';
import { rotationsOf, runToEnd, type Solution } from '../../src/adjustment/run.ts';
import { startFor } from '../../src/adjustment/start.ts';
import type { Mat3 } from '../../src/basics/rotation.ts';
import type { AnyScene } from './any-scene.ts';
import type { CameraPose } from './sight.ts';

export function trueMinimum(scene: AnyScene, problem: Problem): Solution | null {
  const layout: Layout = layoutOf(problem);
  const { widthPx = 0, heightPx = 0, focalOverWidth } = scene.options;
  const focalPx = Math.max(widthPx, heightPx) * (focalOverWidth?.[0] ?? 1);
  const ideal = { ...problem, cameras: problem.cameras.map((camera) => ({ ...camera, focalPx })) };
  const poses = scene.poses.slice(0, problem.poseCount);
  const distances = problem.views.map((view) => (poses[view.pose] as CameraPose).t[2]);
  const start = startFor(
    ideal,
    layout,
    poses.map((pose) => rotationOf(pose, problem.hand)),
    distances,
  );
  if (!start) return null;
  poses.forEach((pose, i) => {
    start.x.set(pose.t, (layout.poses[i] as number) + 3);
  });
  const found = runToEnd(problem, layout, { x: start.x, start });
  const isInFront = rotationsOf(layout, found).every((rotation) => problem.hand * rotation[8] > 0);
  return found.fitted.converged && isInFront ? found : null;
}

/** Without a camshaft mark the engine takes a hand of its own: y and z are then turned about the chamber axis. */
function rotationOf({ rows }: CameraPose, hand: 1 | -1): Mat3 {
  const turn = Math.sign(rows[2][2]) === hand ? 1 : -1;
  const [[a, b, c], [d, e, f], [g, h, i]] = rows;
  return [a, turn * b, turn * c, d, turn * e, turn * f, g, turn * h, turn * i];
}
