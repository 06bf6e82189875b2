/**
 * Start values of the tie points: the crossing of the first ray that shows one with the plane of motion.
 *
 * Fails    left at the origin where that ray runs along the plane: the fit has to find it.
 */
import type { Mat3, Vec3 } from '../basics/rotation.ts';
import type { Layout } from './layout.ts';
import type { Problem } from './problem.ts';
import { normalisedRay, planeCrossing } from './start-rays.ts';

/** x: translations of the poses already set; rotations: camera_from_chamber of each pose. */
export function startTies(
  problem: Problem,
  layout: Layout,
  x: Float64Array,
  rotations: readonly Mat3[],
): void {
  const set = new Set<string>();
  for (const view of problem.views) {
    const at = (layout.poses[view.pose] as number) + 3;
    const pose = {
      rotation: rotations[view.pose] as Mat3,
      translation: [x[at] as number, x[at + 1] as number, x[at + 2] as number] as Vec3,
    };
    const camera = problem.cameras[view.camera] as Problem['cameras'][number];
    for (const mark of view.marks) {
      if (mark.kind !== 'tie-point' || set.has(mark.tie)) continue;
      const place = layout.ties.get(mark.tie);
      const crossing = planeCrossing(pose, normalisedRay(camera, mark), 0);
      if (place === undefined || !crossing) continue;
      x.set([crossing.xMm, crossing.yMm, 0], place);
      set.add(mark.tie);
    }
  }
}
