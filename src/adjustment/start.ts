/**
 * Closed-form start values for one assumed rotation of each camera.
 *
 * Model    the reference gives the distance, the face mark with it the translation; every other mark is the crossing of its
 *          ray with the plane at its usual depth.
 * Assumes  no distortion, focal length at its prior.
 * Fails    null where rays run along the plane of motion: another rotation may still do.
 */
import { type Mat3, rotate, type Vec3 } from '../basics/rotation.ts';
import type { Mark } from '../marks/mark.ts';
import type { Layout } from './layout.ts';
import { lineThrough } from './line-fit.ts';
import * as known from './priors.ts';
import { type Problem, type ProblemView, zFromDepth } from './problem.ts';
import { bandAngles } from './start-band.ts';
import { normalisedRay, type PlaneCrossing, planeCrossing } from './start-rays.ts';
import { startTapeEdge } from './start-tape-edge.ts';
import { startTarget } from './start-target.ts';
import { startTies } from './start-ties.ts';

export type Start = {
  readonly x: Float64Array;
  /** camera_from_chamber of each pose where its rotation vector is zero. */
  readonly rotations: readonly Mat3[];
};

/** rotations: camera_from_chamber of each pose; distances: from camera to brake for each view, mm (start-distance). */
export function startFor(
  problem: Problem,
  layout: Layout,
  rotations: readonly Mat3[],
  distances: readonly number[],
): Start | null {
  const x = new Float64Array(layout.size);
  setCameras(problem, layout, x);
  for (const [pose, rotation] of rotations.entries()) {
    const viewIndex = problem.views.findIndex((view) => view.pose === pose);
    const view = problem.views[viewIndex];
    const translation = view && translationFor(problem, view, rotation, distances[viewIndex] as number);
    if (!translation) return null;
    x.set(translation, (layout.poses[pose] as number) + 3);
  }
  if (!setPinsAndArm(problem, layout, x, rotations)) return null;
  for (const viewIndex of problem.views.keys()) setLinesAndNuisance(problem, layout, viewIndex, x, rotations);
  startTies(problem, layout, x, rotations);
  return { x, rotations };
}

function setCameras(problem: Problem, layout: Layout, x: Float64Array): void {
  problem.cameras.forEach((camera, i) => {
    const { focalPx, cxPx, cyPx, k1, k2 } = camera;
    x.set([Math.log(focalPx), cxPx, cyPx, k1, k2], layout.cameras[i]);
  });
}

/** The face mark's ray at the given distance is where the face point is. */
function translationFor(
  problem: Problem,
  view: ProblemView,
  rotation: Mat3,
  distanceMm: number,
): Vec3 | null {
  const face = view.marks.find((m) => m.kind === 'chamber-face');
  if (!face) return null;
  const ray = normalisedRay(problem.cameras[view.camera] as Problem['cameras'][number], face);
  const [fx, fy, fz] = rotate(rotation, [0, 0, zFromDepth(known.FACE_DEPTH[0], problem.hand)]);
  return [ray[0] * distanceMm - fx, ray[1] * distanceMm - fy, distanceMm - fz];
}

function setPinsAndArm(
  problem: Problem,
  layout: Layout,
  x: Float64Array,
  rotations: readonly Mat3[],
): boolean {
  const { hand, views } = problem;
  x[layout.pinDepth] = known.PIN_DEPTH[0];
  x[layout.faceDepth] = known.FACE_DEPTH[0];
  x[layout.rodInner] = known.ROD_INNER_END[0];
  const arms: PlaneCrossing[] = [];
  for (const view of views) {
    const crossing = crossings(problem, layout, view, x, rotations);
    const pin = crossing('clevis-pin', zFromDepth(known.PIN_DEPTH[0], hand))[0];
    const at = layout.pins[view.state];
    if (!pin || at === undefined) return false;
    x.set([Math.max(pin.xMm, 5), pin.yMm], at);
    arms.push(...crossing('camshaft-end', zFromDepth(known.CAMSHAFT_DEPTH[0], hand)));
  }
  if (layout.camshaft !== null) {
    if (arms.length === 0) return false;
    const cx = arms.reduce((sum, arm) => sum + arm.xMm, 0) / arms.length;
    const cy = arms.reduce((sum, arm) => sum + arm.yMm, 0) / arms.length;
    const pin = Object.values(layout.pins)[0] as number;
    const reach = Math.hypot(cx - (x[pin] as number), cy - (x[pin + 1] as number));
    const length = problem.references.armLength?.lengthMm ?? reach;
    x.set([cx, cy, known.CAMSHAFT_DEPTH[0], length], layout.camshaft);
  }
  return true;
}

function setLinesAndNuisance(
  problem: Problem,
  layout: Layout,
  viewIndex: number,
  x: Float64Array,
  rotations: readonly Mat3[],
): void {
  const view = problem.views[viewIndex] as ProblemView;
  const crossing = crossings(problem, layout, view, x, rotations);
  const tape = layout.tapes[viewIndex];
  if (tape !== null && tape !== undefined) {
    const points = crossing('tape-graduation', zFromDepth(known.TAPE_DEPTH[0], problem.hand));
    const readings = view.marks.flatMap((m) => (m.kind === 'tape-graduation' ? [m.readingMm] : []));
    const line = lineThrough(points, readings);
    x.set([line.xMm, line.yMm, known.TAPE_DEPTH[0], line.angleRad, 0, 0, 0], tape);
    const onEdge = crossing('tape-edge', zFromDepth(known.TAPE_DEPTH[0], problem.hand));
    startTapeEdge(layout, viewIndex, view, onEdge, x);
  }
  const distance = layout.distances[viewIndex];
  if (
    distance !== null &&
    distance !== undefined &&
    layout.distance !== null &&
    problem.references.distance
  ) {
    const [begin, end] = crossing('distance-end', zFromDepth(known.DISTANCE_DEPTH[0], problem.hand));
    x[layout.distance] = problem.references.distance.distanceMm;
    if (begin && end) {
      const angle = Math.atan2(end.yMm - begin.yMm, end.xMm - begin.xMm);
      x.set([begin.xMm, begin.yMm, known.DISTANCE_DEPTH[0], angle, 0], distance);
    }
  }
  const pin = x[layout.pins[view.state] as number] as number;
  const rodMarks = view.marks.filter((m) => m.kind === 'rod-line');
  crossing('rod-line', 0).forEach((point, i) => {
    x[layout.nuisance.get((rodMarks[i] as Mark).id) as number] = pin - point.xMm;
  });
  bandAngles(problem, layout, viewIndex, x, rotations);
  startTarget(problem, layout, viewIndex, x, rotations);
}

/** Crossings of a view's marks of one kind with the plane at a given z of the chamber frame. */
function crossings(
  problem: Problem,
  layout: Layout,
  view: ProblemView,
  x: Float64Array,
  rotations: readonly Mat3[],
) {
  const camera = problem.cameras[view.camera] as Problem['cameras'][number];
  const at = (layout.poses[view.pose] as number) + 3;
  const pose = {
    rotation: rotations[view.pose] as Mat3,
    translation: [x[at] as number, x[at + 1] as number, x[at + 2] as number] as Vec3,
  };
  return (kind: Mark['kind'], zMm: number): PlaneCrossing[] =>
    view.marks
      .filter((mark) => mark.kind === kind)
      .flatMap((mark) => planeCrossing(pose, normalisedRay(camera, mark), zMm) ?? []);
}
