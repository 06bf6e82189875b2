/**
 * From where each picture was taken, as the adjusted geometry has it: how far off square, and how far before or behind the pin's end
 * the reference lies.
 *
 * Model    off square: angle between the line of sight to the middle of the rod and the pin's own axis, z
 *          apart: mean distance along z of the marked graduations, or corners of the printed target, from the pin's visible end
 *          share: of the stroke's variance, what the reference's own hold adds
 * Assumes  an adjustment that was found
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import type { BudgetGroup } from '../adjustment/budget-group.ts';
import { cameraPlace, poseAt } from '../adjustment/pose.ts';
import { worldPoint } from '../adjustment/world-points.ts';
import type { Mat3, Vec3 } from '../basics/rotation.ts';
import type { Measured } from './measured.ts';
import type { PictureSight } from './measurement.ts';

const HELD = { 'tape-graduation': 'tape', 'target-corner': 'target' } as const;

export function pictureSight(adjustment: Adjustment, viewIndex: number, stroke: Measured): PictureSight {
  const { layout, problem, best } = adjustment;
  const view = problem.views[viewIndex] as (typeof problem.views)[number];
  const pin = layout.pins[view.state] as number;
  const pinZ = problem.hand * (best.x[layout.pinDepth] as number);
  const middle: Vec3 = [(best.x[pin] as number) / 2, (best.x[pin + 1] as number) / 2, pinZ / 2];
  const at = poseAt(best.x, layout.poses[view.pose] as number, best.start.rotations[view.pose] as Mat3);
  const [ex, ey, ez] = cameraPlace(at);
  const [dx, dy, dz] = [ex - middle[0], ey - middle[1], ez - middle[2]];
  return {
    state: view.state,
    offSquareRad: Math.atan2(Math.hypot(dx, dy), Math.abs(dz)),
    reference: referenceApart(adjustment, viewIndex, pinZ, stroke),
  };
}

function referenceApart(
  { layout, problem, best }: Adjustment,
  viewIndex: number,
  pinZ: number,
  stroke: Measured,
): PictureSight['reference'] {
  const view = problem.views[viewIndex] as (typeof problem.views)[number];
  const apart = view.marks.flatMap((mark) => {
    if (mark.kind !== 'tape-graduation' && mark.kind !== 'target-corner') return [];
    const point = worldPoint(mark, { state: view.state, index: viewIndex }, best.x, layout, problem.hand);
    return point ? [{ group: HELD[mark.kind], mm: Math.abs(point.at[2] - pinZ) }] : [];
  });
  const first = apart[0];
  if (!first) return null;
  const alike = apart.filter(({ group }) => group === first.group);
  const apartMm = alike.reduce((sum, { mm }) => sum + mm, 0) / alike.length;
  return { apartMm, share: shareOf(stroke, first.group) };
}

function shareOf({ budget }: Measured, asked: BudgetGroup): number {
  const total = budget.reduce((sum, { u }) => sum + u * u, 0);
  const part = budget.find(({ group }) => group === asked)?.u ?? 0;
  return total > 0 ? (part * part) / total : 0;
}
