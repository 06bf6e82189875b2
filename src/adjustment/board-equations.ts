/**
 * The observation equations of a calibration: pictures that one camera took of one printed board.
 *
 * Model    (u, v) = project(camera, R X + t), a pose (R, t) for each picture, X = (x, y (1 + s), a p^2 + b q^2 + c p q) with
 *          p = x / 100 mm, q = y / 100 mm: the board may be stretched by its printer (s) and bent (a, b, c), the same in all
 *          pictures; residuals (seen - marked) / sigma, two rows a corner; priors (unknown - mean) / sigma, one row each.
 *          Unknowns in the order ln f, cx, cy, k1, k2; s, a, b, c; six for each pose as in pose.ts.
 * Assumes  x and y from about the middle of the board, in nominal mm of the print: its true scale stays unknown and does not bear on
 *          the camera. The board stays as it is from picture to picture.
 * Fails    as camera.ts does behind the camera.
 */
import { dot, type Mat3, type Vec3 } from '../basics/rotation.ts';
import { CAMERA_UNKNOWNS, project } from './camera.ts';
import { Equations } from './equations.ts';
import { byChamberPoint, byRotation, POSE_UNKNOWNS, poseAt, transformed } from './pose.ts';

export type BoardSight = {
  /** Place on the board. */
  readonly xMm: number;
  readonly yMm: number;
  /** Place in the picture, and its standard uncertainty in x and in y. */
  readonly xPx: number;
  readonly yPx: number;
  readonly sigmaPx: number;
};

export type BoardPrior = { readonly mean: number; readonly sigma: number };

export type BoardProblem = {
  readonly pictures: readonly (readonly BoardSight[])[];
  /** For the camera's five unknowns and the board's four. */
  readonly priors: readonly BoardPrior[];
};

export const FORM_UNKNOWNS = 4;
/** Where the poses begin. */
export const POSES_AT = CAMERA_UNKNOWNS + FORM_UNKNOWNS;
const ENTRIES = POSES_AT + POSE_UNKNOWNS;
const BEND_MM = 100;

/** Row 2 i and 2 i + 1 belong to corner i, counted through all pictures. */
export function boardEquations(
  { pictures, priors }: BoardProblem,
  rotations: readonly Mat3[],
  x: Float64Array,
): Equations {
  const corners = pictures.reduce((sum, sights) => sum + sights.length, 0);
  const rows = 2 * corners + priors.length;
  const equations = new Equations(x.length, { rows, entries: rows * ENTRIES });
  pictures.forEach((sights, i) => {
    const at = POSES_AT + i * POSE_UNKNOWNS;
    const pose = poseAt(x, at, rotations[i] as Mat3);
    for (const sight of sights) {
      const { point, byForm } = onBoard(sight, x);
      const { turned, camera } = transformed(pose, point);
      const seen = project(x, 0, camera);
      const addRow = (byCamera: readonly number[], byPoint: Vec3, offPx: number): void => {
        const w = 1 / sight.sigmaPx;
        const byTurn = byRotation(pose, turned, byPoint);
        const byPlace = byChamberPoint(pose, byPoint);
        for (let k = 0; k < CAMERA_UNKNOWNS; k++) equations.add(k, w * (byCamera[k] as number));
        for (let k = 0; k < FORM_UNKNOWNS; k++)
          equations.add(CAMERA_UNKNOWNS + k, w * dot(byPlace, byForm[k] as Vec3));
        for (let k = 0; k < 3; k++) {
          equations.add(at + k, w * (byTurn[k] as number));
          equations.add(at + 3 + k, w * (byPoint[k] as number));
        }
        equations.close(w * offPx, 'marks');
      };
      addRow(seen.uByCamera, seen.uByPoint, seen.u - sight.xPx);
      addRow(seen.vByCamera, seen.vByPoint, seen.v - sight.yPx);
    }
  });
  for (const [k, { mean, sigma }] of priors.entries()) {
    equations.add(k, 1 / sigma);
    equations.close(((x[k] as number) - mean) / sigma, 'camera');
  }
  return equations;
}

function onBoard({ xMm, yMm }: BoardSight, x: Float64Array): { point: Vec3; byForm: readonly Vec3[] } {
  const [stretch, a, b, c] = [5, 6, 7, 8].map((k) => x[k] as number) as [number, number, number, number];
  const [p, q] = [xMm / BEND_MM, yMm / BEND_MM];
  return {
    point: [xMm, yMm * (1 + stretch), a * p * p + b * q * q + c * p * q],
    byForm: [
      [0, yMm, 0],
      [0, 0, p * p],
      [0, 0, q * q],
      [0, 0, p * q],
    ],
  };
}
