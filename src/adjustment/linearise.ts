/**
 * All observation equations of a problem at given unknowns: marks, arc of the arm, contact with the pin, direction of view, priors.
 *
 * Model    mark: (projected - marked) / sigma, two rows; arc: (|pin - camshaft| - L) / play, one row a state;
 *          direction of view: view-directions.ts, two rows a pose;
 *          rim mark: its angle beyond the part of the rim that faces the camera / its width, one row;
 *          prior: (unknown - mean) / sigma, one row.
 */
import { dot, type Vec3 } from '../basics/rotation.ts';
import type { Mark } from '../marks/mark.ts';
import type { BudgetGroup } from './budget-group.ts';
import { roomForProjection } from './camera.ts';
import { Equations } from './equations.ts';
import type { Layout } from './layout.ts';
import { addMark, type Sight } from './mark-equations.ts';
import { addContacts } from './pin-contact.ts';
import { byRotation, type Pose, poseAt } from './pose.ts';
import { ARC_PLAY_MM, BAND_BEYOND_RAD, BAND_FREE_RAD } from './priors.ts';
import type { Problem } from './problem.ts';
import type { Start } from './start.ts';
import { facingAngle, turnedBy } from './start-band.ts';
import { addViewDirections } from './view-directions.ts';
import { WorldPoint } from './world-point.ts';
import { besideBy, besideOnArm, distancePoint, worldPoint } from './world-points.ts';

export type PriorRow = {
  readonly index: number;
  readonly mean: number;
  readonly sigma: number;
  readonly group: BudgetGroup;
};

/** A mark with the two rows of the equations that are its own. */
export type MarkRows = { readonly mark: Mark; readonly viewIndex: number; readonly row: number };

/** Entries of the fullest mark, a point on the tape's edge: camera 5, pose 6, the tape 10, an offset 2. */
const MOST_OF_MARK = 23;
/** And of the fullest other row but a prior's, contact of a target with the pin. */
const MOST_OF_OTHERS = 9;

/**
 * Equations of the marks stand first, then arcs, contacts, directions of view, priors. spare: equations of the same problem that
 * nobody needs any more, filled anew.
 */
export function linearise(
  x: Float64Array,
  problem: Problem,
  layout: Layout,
  start: Pick<Start, 'rotations'>,
  priors: readonly PriorRow[],
  spare?: Equations,
): Equations {
  const equations = spare?.emptied() ?? roomForEquations(problem, layout, priors);
  const poses = layout.poses.map((at, i) => poseAt(x, at, start.rotations[i] as Pose['rotation']));
  const [room, place] = [roomForProjection(), new WorldPoint()];
  for (const [viewIndex, view] of problem.views.entries()) {
    const pose = poses[view.pose] as Pose;
    const cameraAt = layout.cameras[view.camera] as number;
    const sight: Sight = { pose, cameraAt, poseAt: layout.poses[view.pose] as number, room };
    for (const mark of view.marks) {
      const point = pointOf(problem, viewIndex, mark, x, layout, place);
      if (!point) continue;
      addMark(equations, mark, point, sight, x);
      if (mark.kind === 'clamp-band')
        addFacing(equations, layout.nuisance.get(mark.id) as number, sight.poseAt, pose, x);
    }
  }
  addArcs(equations, x, layout);
  addContacts(equations, x, problem, layout);
  addViewDirections(equations, poses, layout.poses, problem);
  for (const { index, mean, sigma, group } of priors) {
    equations.add(index, 1 / sigma);
    equations.close(((x[index] as number) - mean) / sigma, group);
  }
  return equations;
}

function roomForEquations(problem: Problem, layout: Layout, priors: readonly PriorRow[]): Equations {
  const markCount = problem.views.reduce((sum, view) => sum + view.marks.length, 0);
  const perView = 2 * problem.views.length;
  const rows =
    1 + 3 * markCount + 2 * problem.poseCount + perView + Object.keys(layout.pins).length + priors.length;
  const entries = markCount * MOST_OF_MARK + (rows - priors.length) * MOST_OF_OTHERS + priors.length;
  return new Equations(layout.size, { rows, entries });
}

/** Which rows are whose: of the pairs of rows, which are the marks' alone, in the order of the marks. */
export function markRowsOf(
  equations: Equations,
  x: Float64Array,
  problem: Problem,
  layout: Layout,
): readonly MarkRows[] {
  const used = problem.views.flatMap(({ marks }, viewIndex) =>
    marks
      .filter((mark) => pointOf(problem, viewIndex, mark, x, layout, new WorldPoint()))
      .map((mark) => ({ mark, viewIndex })),
  );
  return equations.pairs.map((row, i) => ({ ...(used[i] as (typeof used)[number]), row }));
}

/** Where a marked thing is in the chamber frame; null for a mark that the problem does not use. */
function pointOf(
  problem: Problem,
  viewIndex: number,
  mark: Mark,
  x: Float64Array,
  layout: Layout,
  into: WorldPoint,
): WorldPoint | null {
  const { state, marks } = problem.views[viewIndex] as Problem['views'][number];
  if (mark.kind !== 'distance-end') {
    const thing = worldPoint(mark, { state, index: viewIndex }, x, layout, problem.hand, into);
    const offset = mark.followedFrom === undefined ? undefined : layout.offsets.get(mark.followedFrom);
    if (!thing || offset === undefined) return thing;
    const [camshaft, pin] = [layout.camshaft, layout.pins[state]];
    return mark.kind === 'camshaft-end' && camshaft !== null && pin !== undefined
      ? besideOnArm(thing, offset, x, { camshaft, pin })
      : besideBy(thing, offset, x);
  }
  const end = mark === marks.find(({ kind }) => kind === 'distance-end') ? 0 : 1;
  return distancePoint(end, layout.distances[viewIndex], x, layout, problem.hand, into);
}

function addArcs(equations: Equations, x: Float64Array, layout: Layout): void {
  const c = layout.camshaft;
  if (c === null) return;
  for (const pin of Object.values(layout.pins)) {
    const dx = (x[pin] as number) - (x[c] as number);
    const dy = (x[pin + 1] as number) - (x[c + 1] as number);
    const reach = Math.hypot(dx, dy) || 1;
    const w = 1 / ARC_PLAY_MM;
    equations.add(pin, (w * dx) / reach);
    equations.add(pin + 1, (w * dy) / reach);
    equations.add(c, (-w * dx) / reach);
    equations.add(c + 1, (-w * dy) / reach);
    equations.add(c + 3, -w);
    equations.close(w * (reach - (x[c + 3] as number)), 'mechanism');
  }
}

/**
 * A rim mark beyond the part of the rim that faces the camera; none where it is not beyond it.
 * Facing angle f = atan2(-z, -y) of c = R^T t: df = (y dz - z dy) / (y^2 + z^2); dc_k/dw = J^T (R e_k x t), dc_k/dt = R e_k.
 */
function addFacing(equations: Equations, mark: number, poseAt: number, pose: Pose, x: Float64Array): void {
  const off = turnedBy(x[mark] as number, facingAngle(pose.rotation, pose.translation));
  const beyond = Math.abs(off) - BAND_FREE_RAD;
  if (beyond <= 0) return;
  const [r, t] = [pose.rotation, pose.translation];
  const [ey, ez]: readonly [Vec3, Vec3] = [
    [r[1], r[4], r[7]],
    [r[2], r[5], r[8]],
  ];
  const [y, z] = [dot(ey, t), dot(ez, t)];
  const w = 1 / BAND_BEYOND_RAD;
  const across = y * y + z * z;
  const [turnY, turnZ] = [byRotation(pose, ey, t), byRotation(pose, ez, t)];
  equations.add(mark, w);
  for (let k = 0; k < 3; k++) {
    equations.add(poseAt + k, (-w * (y * (turnZ[k] as number) - z * (turnY[k] as number))) / across);
    equations.add(poseAt + 3 + k, (-w * (y * (ez[k] as number) - z * (ey[k] as number))) / across);
  }
  equations.closeBound(w * Math.sign(off) * beyond, 'clamp-band');
}
