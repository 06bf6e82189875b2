/**
 * The least-squares fit of a calibration: priors, start, solution, scatter and covariance.
 *
 * Model    board-equations.ts; covariance (J^T J)^-1, multiplied by chi-square over its degrees of freedom where that is above one.
 * Assumes  corner errors independent of each other.
 * Fails    where nothing agrees the scatter says so; where nothing holds an unknown its uncertainty does, or null.
 */
import type { Mat3 } from '../basics/rotation.ts';
import { choleskyFactor, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';
import { type BoardPrior, type BoardSight, boardEquations } from './board-equations.ts';
import { startPose } from './board-start.ts';
import { CAMERA_UNKNOWNS } from './camera.ts';
import { type Fitted, levenbergMarquardt } from './levenberg-marquardt.ts';

export type BoardPicture = {
  /** Of the picture as stored; the sights are in its pixels. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sights: readonly BoardSight[];
};

/** Of the longer side: a phone's main camera, and a longer lens. */
const START_FOCAL_SHARES = [0.8, 2.2] as const;
/** Ten are usual; a fit that needs many more is one that nothing holds. */
const FULL = { maxIterations: 60, tolerance: 1e-4 };
/** Wide: they only keep finite what the pictures leave open. */
const U_LN_FOCAL = 1;
const U_PRINCIPAL_SHARE = 0.1;
const U_K1 = 0.5;
const U_K2 = 1;
/** Printers feed paper a little long or short; paper on a plate stays flat within this at 100 mm from its middle. Common
 * practice, no source. */
const U_STRETCH = 0.003;
const U_BEND_MM = 1;

/** The first start that comes to an agreement, else the one that comes nearest to it. */
export function fitOf(pictures: readonly BoardPicture[], longerPx: number, mostPx: number): Fitted {
  const [usual, long] = START_FOCAL_SHARES;
  const fitted = fitFrom(usual * longerPx, pictures);
  if (scatterOf(fitted, pictures).rmsPx <= mostPx) return fitted;
  const other = fitFrom(long * longerPx, pictures);
  return other.chiSquare < fitted.chiSquare ? other : fitted;
}

function fitFrom(focalPx: number, pictures: readonly BoardPicture[]): Fitted {
  const { widthPx, heightPx } = pictures[0] as BoardPicture;
  const held = [Math.log(focalPx), widthPx / 2, heightPx / 2, 0, 0, 0, 0, 0, 0];
  const offPx = U_PRINCIPAL_SHARE * Math.max(widthPx, heightPx);
  const sigmas = [U_LN_FOCAL, offPx, offPx, U_K1, U_K2, U_STRETCH, U_BEND_MM, U_BEND_MM, U_BEND_MM];
  const priors = held.map((mean, i): BoardPrior => ({ mean, sigma: sigmas[i] as number }));
  const centred = fromMiddle(pictures);
  const poses = centred.map((sights) => startPose(sights, held));
  const rotations: readonly Mat3[] = poses.map(({ rotation }) => rotation);
  const x = new Float64Array([...held, ...poses.flatMap(({ translation }) => [0, 0, 0, ...translation])]);
  return levenbergMarquardt((at) => boardEquations({ pictures: centred, priors }, rotations, at), x, FULL);
}

function fromMiddle(pictures: readonly BoardPicture[]): readonly (readonly BoardSight[])[] {
  const all = sightsOf(pictures);
  const middle = (of: (sight: BoardSight) => number) => {
    const values = all.map(of);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  const [xMm, yMm] = [middle((sight) => sight.xMm), middle((sight) => sight.yMm)];
  return pictures.map(({ sights }) =>
    sights.map((sight) => ({ ...sight, xMm: sight.xMm - xMm, yMm: sight.yMm - yMm })),
  );
}

export function scatterOf({ equations }: Fitted, pictures: readonly BoardPicture[]) {
  const squares = sightsOf(pictures).map(
    ({ sigmaPx }, i) =>
      sigmaPx ** 2 *
      ((equations.residuals[2 * i] as number) ** 2 + (equations.residuals[2 * i + 1] as number) ** 2),
  );
  let from = 0;
  const pictureRmsPx = pictures.map(({ sights }) => {
    const own = squares.slice(from, from + sights.length);
    from += sights.length;
    return rootMean(own);
  });
  return { pictureRmsPx, rmsPx: rootMean(squares) };
}

function rootMean(squares: readonly number[]): number {
  return Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / squares.length);
}

/** Of the camera's unknowns; null where one is not held at all. */
export function uncertaintiesOf({ x, equations, chiSquare }: Fitted): readonly number[] | null {
  const n = x.length;
  const lower = choleskyFactor(equations.normal().matrix, n);
  if (!lower) return null;
  const covariance = inverseFromLower(lowerInverse(lower, n), n);
  const scatter = Math.max(1, chiSquare / (equations.rows - n));
  return Array.from({ length: CAMERA_UNKNOWNS }, (_, i) =>
    Math.sqrt((covariance[i * n + i] as number) * scatter),
  );
}

export function sightsOf(pictures: readonly BoardPicture[]): readonly BoardSight[] {
  return pictures.flatMap(({ sights }) => sights);
}
