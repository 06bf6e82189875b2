/**
 * Rotations camera_from_chamber worth starting from, for one view.
 *
 * Model    a grid: the rod's direction in the picture gives the roll, yaw and pitch are square or half a radian off, in a
 *          virtual camera that looks at the middle of the rod; where the printed target is marked, its two possible planes
 *          (start-card.ts); and, where a clamp band is marked, its two possible axes as the chamber axis, each with three
 *          pitches about it. From a rotation that fits, its mirrored tilts: the chamber axis
 *          turned towards the camera as much as it was turned away, the pitch about it kept or turned round; few marks
 *          and little perspective leave these hard to tell apart.
 */
import {
  cross,
  dot,
  type Mat3,
  multiply,
  rotate,
  rotationAbout,
  transpose,
  unit,
  type Vec3,
} from '../basics/rotation.ts';
import { circleNormals } from './circle-normals.ts';
import type { Problem, ProblemView } from './problem.ts';
import { cardRotations } from './start-card.ts';
import { normalisedRay, rotationToRay } from './start-rays.ts';

const OFF_RAD = 0.5;
const STEPS = [0, -OFF_RAD, OFF_RAD];

export function startRotations(problem: Problem, view: ProblemView): readonly Mat3[] {
  const face = view.marks.find((m) => m.kind === 'chamber-face');
  const pin = view.marks.find((m) => m.kind === 'clevis-pin');
  if (!face || !pin) return [];
  const camera = problem.cameras[view.camera] as Problem['cameras'][number];
  const [f, p] = [normalisedRay(camera, face), normalisedRay(camera, pin)];
  const grid = STEPS.flatMap((yaw) => STEPS.map((pitch) => fromTilt(f, p, yaw, pitch, problem.hand)));
  const band = problem.references.clampBand ? view.marks.filter((m) => m.kind === 'clamp-band') : [];
  const axes = circleNormals(band.map((mark) => normalisedRay(camera, mark)));
  const outwards = axes.map((axis) => pointed(axis, f, p));
  const byBand = outwards.flatMap((x) => STEPS.map((pitch) => fromAxis(f, x, pitch, problem.hand)));
  return [...cardRotations(problem, view, f, p), ...byBand, ...grid];
}

export function mirroredRotations(problem: Problem, view: ProblemView, rotation: Mat3): readonly Mat3[] {
  const face = view.marks.find((m) => m.kind === 'chamber-face');
  if (!face) return [];
  const sight = normalisedRay(problem.cameras[view.camera] as Problem['cameras'][number], face);
  const line = unit(sight);
  const x: Vec3 = [rotation[0], rotation[3], rotation[6]];
  const away: Vec3 = [rotation[2] * problem.hand, rotation[5] * problem.hand, rotation[8] * problem.hand];
  const square = fromAxis(sight, x, 0, 1);
  const pitch = Math.atan2(
    -dot(away, [square[1], square[4], square[7]]),
    dot(away, [square[2], square[5], square[8]]),
  );
  const depth = dot(x, line);
  const mirrored: Vec3 = [x[0] - 2 * depth * line[0], x[1] - 2 * depth * line[1], x[2] - 2 * depth * line[2]];
  return [
    fromAxis(sight, mirrored, pitch, problem.hand),
    fromAxis(sight, mirrored, -pitch, problem.hand),
    fromAxis(sight, x, -pitch, problem.hand),
  ];
}

function fromTilt(f: Vec3, p: Vec3, yaw: number, pitch: number, hand: 1 | -1): Mat3 {
  const look = rotationToRay([(f[0] + p[0]) / 2, (f[1] + p[1]) / 2, 1]);
  const back = transpose(look);
  const [vf, vp] = [rotate(back, f), rotate(back, p)];
  const roll = Math.atan2(vp[1] / vp[2] - vf[1] / vf[2], vp[0] / vp[2] - vf[0] / vf[2]);
  const turned = multiply(rotationAbout(1, yaw), multiply(rotationAbout(0, pitch), handed(hand)));
  return multiply(look, multiply(rotationAbout(2, roll), turned));
}

/** The one of two opposite directions that runs in the picture as the rod does, from the face to the pin. */
function pointed(axis: Vec3, f: Vec3, p: Vec3): Vec3 {
  const forward = (axis[0] - f[0] * axis[2]) * (p[0] - f[0]) + (axis[1] - f[1] * axis[2]) * (p[1] - f[1]);
  return forward < 0 ? [-axis[0], -axis[1], -axis[2]] : axis;
}

/** Chamber axis x given in the camera frame; depth as nearly along the line of sight as it can be, then pitched about the axis. */
function fromAxis(sight: Vec3, x: Vec3, pitch: number, hand: 1 | -1): Mat3 {
  const down = unit(cross(unit(sight), x));
  const away = unit(cross(x, down));
  const square: Mat3 = [x[0], down[0], away[0], x[1], down[1], away[1], x[2], down[2], away[2]];
  return multiply(square, multiply(rotationAbout(0, pitch), handed(hand)));
}

function handed(hand: 1 | -1): Mat3 {
  return [1, 0, 0, 0, hand, 0, 0, 0, hand];
}
