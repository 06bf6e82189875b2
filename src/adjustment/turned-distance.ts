/**
 * The other tilt of a known distance: the two ends of a length in the picture leave two places for it, nearer and farther.
 *
 * Model    the first end stays; the second moves along its line of sight to the other point that is as far from the first: its
 *          mirror image in the foot of the perpendicular from the first end on that line.
 * Fails    the same place again where the length stands square to the line of sight.
 */
import { dot, unit, type Vec3 } from '../basics/rotation.ts';
import type { Layout } from './layout.ts';
import { cameraPlace } from './pose.ts';
import type { Problem } from './problem.ts';
import type { Start } from './start.ts';
import { distancePoint } from './world-points.ts';

/** One start for each picture that shows a distance, the rest as it is. */
export function turnedDistances(problem: Problem, layout: Layout, { x, rotations }: Start): readonly Start[] {
  return problem.views.flatMap((view, viewIndex) => {
    const place = layout.distances[viewIndex];
    if (place === null || place === undefined) return [];
    const [begin, end] = ([0, 1] as const).map((which) =>
      distancePoint(which, place, x, layout, problem.hand),
    );
    const rotation = rotations[view.pose];
    if (!begin || !end || !rotation) return [];
    const at = (layout.poses[view.pose] as number) + 3;
    const translation: Vec3 = [x[at] as number, x[at + 1] as number, x[at + 2] as number];
    const centre = cameraPlace({ rotation, translation });
    const sight = unit(between(centre, end.at));
    const beyondFoot = dot(between(begin.at, end.at), sight);
    const other = between(begin.at, end.at).map(
      (d, k) => d - 2 * beyondFoot * (sight[k] as number),
    ) as unknown as Vec3;
    const turned = new Float64Array(x);
    turned[place + 3] = Math.atan2(other[1], other[0]);
    turned[place + 4] = Math.asin(
      Math.max(-1, Math.min(1, (problem.hand * other[2]) / Math.hypot(...other))),
    );
    return [{ x: turned, rotations }];
  });
}

function between(from: Vec3, to: Vec3): Vec3 {
  return [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
}
