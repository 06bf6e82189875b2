/**
 * Start values of a calibration: where the board is in each picture, for a camera that is taken as known.
 *
 * Model    turn and distance from the two corners that lie farthest apart; the board flat to the camera or tilted by 0.5 rad in one of
 *          eight directions; each is fitted with the camera held, and the one that fits best is kept.
 * Fails    never: a poor start shows in the fit that follows.
 */
import {
  type Mat3,
  multiply,
  rotate,
  rotationAbout,
  rotationFromVector,
  type Vec3,
} from '../basics/rotation.ts';
import { type BoardPrior, type BoardSight, boardEquations, POSES_AT } from './board-equations.ts';
import { levenbergMarquardt } from './levenberg-marquardt.ts';
import { poseAt } from './pose.ts';

export type BoardPose = { readonly rotation: Mat3; readonly translation: Vec3 };

const QUICK = { maxIterations: 15, tolerance: 1 };
const TILT_RAD = 0.5;
const HELD = 1e-6;

/** held: the camera's unknowns and the board's, as in board-equations.ts. */
export function startPose(sights: readonly BoardSight[], held: readonly number[]): BoardPose {
  const priors: BoardPrior[] = held.map((mean) => ({ mean, sigma: HELD }));
  const tries = tiltedPoses(sights, held).map(({ rotation, translation }) => {
    const x = new Float64Array([...held, 0, 0, 0, ...translation]);
    const fitted = levenbergMarquardt(
      (at) => boardEquations({ pictures: [sights], priors }, [rotation], at),
      x,
      QUICK,
    );
    return { chiSquare: fitted.chiSquare, pose: poseAt(fitted.x, POSES_AT, rotation) };
  });
  return tries.reduce((best, each) => (each.chiSquare < best.chiSquare ? each : best)).pose;
}

function tiltedPoses(sights: readonly BoardSight[], held: readonly number[]): readonly BoardPose[] {
  const [a, b] = farthestApart(sights);
  const turn = Math.atan2(b.yPx - a.yPx, b.xPx - a.xPx) - Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm);
  const [lnF, cx, cy] = held as readonly [number, number, number];
  const f = Math.exp(lnF);
  const pxPerMm = Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx) / Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
  const middle: Vec3 = [(a.xMm + b.xMm) / 2, (a.yMm + b.yMm) / 2, 0];
  const zMm = f / pxPerMm;
  const seen: Vec3 = [(((a.xPx + b.xPx) / 2 - cx) / f) * zMm, (((a.yPx + b.yPx) / 2 - cy) / f) * zMm, zMm];
  const directions = Array.from({ length: 8 }, (_, k) => (k * Math.PI) / 4);
  const tilts: Vec3[] = [
    [0, 0, 0],
    ...directions.map((rad): Vec3 => [TILT_RAD * Math.cos(rad), TILT_RAD * Math.sin(rad), 0]),
  ];
  return tilts.map((tilt) => {
    const rotation = multiply(rotationFromVector(tilt), rotationAbout(2, turn));
    const turned = rotate(rotation, middle);
    const translation: Vec3 = [seen[0] - turned[0], seen[1] - turned[1], seen[2] - turned[2]];
    return { rotation, translation };
  });
}

function farthestApart(sights: readonly BoardSight[]): readonly [BoardSight, BoardSight] {
  const first = sights[0] as BoardSight;
  const from = (place: BoardSight) => (best: BoardSight, each: BoardSight) =>
    reach(place, each) > reach(place, best) ? each : best;
  const a = sights.reduce(from(first), first);
  return [a, sights.reduce(from(a), first)];
}

function reach(a: BoardSight, b: BoardSight): number {
  return Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
}
