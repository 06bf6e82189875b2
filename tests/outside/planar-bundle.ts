/**
 * Pictures of a flat pattern of known points, adjusted together with the engine's camera, pose, equations and solver.
 *
 * Model    x = project(camera, R X + t), one camera (ln f, cx, cy, k1, k2) and one pose for each picture, X known, or its x and y
 *          unknown; residuals in px / sigma; optionally priors on the camera.
 * Assumes  the pattern lies before the camera. Start of each pose: its in-plane turn and scale from two corners, tilted in four
 *          directions; the best of the five is kept.
 */
import { CAMERA_UNKNOWNS, project } from '../../src/adjustment/camera.ts';
import { Equations } from '../../src/adjustment/equations.ts';
import { type Fitted, levenbergMarquardt } from '../../src/adjustment/levenberg-marquardt.ts';
import { byChamberPoint, byRotation, POSE_UNKNOWNS, poseAt, transformed } from '../../src/adjustment/pose.ts';
import { type Mat3, multiply, rotate, rotationAbout, type Vec3 } from '../../src/basics/rotation.ts';

/** A point of the pattern and where a picture shows it. */
export type Sight = {
  readonly xMm: number;
  readonly yMm: number;
  /** Out of the pattern's plane; 0 where it is left out. */
  readonly zMm?: number;
  /** Its x and y are not known but asked for; what is given is a start. */
  readonly free?: boolean;
  readonly xPx: number;
  readonly yPx: number;
};
export type Prior = { readonly mean: number; readonly sigma: number };

export type Bundle = {
  readonly pictures: readonly (readonly Sight[])[];
  readonly sigmaPx: number;
  /** Start of ln f, cx, cy, k1, k2. */
  readonly cameraStart: readonly number[];
  readonly cameraPriors?: readonly Prior[];
};

export type Adjusted = { readonly fitted: Fitted; readonly rotations: readonly Mat3[] };

const TIGHT = { maxIterations: 200, tolerance: 1e-9 };

export function adjustBundle(bundle: Bundle): Adjusted {
  const singles = bundle.pictures.map((sights) =>
    singlePose(
      bundle,
      sights.filter(({ free }) => !free),
    ),
  );
  const rotations = singles.map(({ rotation }) => rotation);
  const x = new Float64Array([
    ...bundle.cameraStart,
    ...singles.flatMap(({ translation }) => [0, 0, 0, ...translation]),
    ...freeSights(bundle.pictures).flatMap(({ xMm, yMm }) => [xMm, yMm]),
  ]);
  const fitted = levenbergMarquardt((at) => equationsAt(bundle, rotations, at), x, TIGHT);
  return { fitted, rotations };
}

function freeSights(pictures: Bundle['pictures']): readonly Sight[] {
  return pictures.flat().filter(({ free }) => free);
}

function singlePose(bundle: Bundle, sights: readonly Sight[]): { rotation: Mat3; translation: Vec3 } {
  const held = bundle.cameraStart.map((mean) => ({ mean, sigma: 1e-6 }));
  const alone = { ...bundle, pictures: [sights], cameraPriors: held };
  const runs = starts(bundle, sights).map(({ rotation, translation }) => {
    const x = new Float64Array([...bundle.cameraStart, 0, 0, 0, ...translation]);
    const fitted = levenbergMarquardt((at) => equationsAt(alone, [rotation], at), x, TIGHT);
    return { fitted, rotation };
  });
  const best = runs.sort((a, b) => a.fitted.chiSquare - b.fitted.chiSquare)[0];
  if (!best) throw new Error('there are five starts');
  return poseAt(best.fitted.x, CAMERA_UNKNOWNS, best.rotation);
}

function starts({ cameraStart }: Bundle, sights: readonly Sight[]) {
  const [a, b] = [sights[0], sights.at(-1)];
  if (!a || !b) throw new Error('a picture without corners');
  const turn = Math.atan2(b.yPx - a.yPx, b.xPx - a.xPx) - Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm);
  const [lnF = 0, cx = 0, cy = 0] = cameraStart;
  const f = Math.exp(lnF);
  const pxPerMm = Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx) / Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
  const middle: Vec3 = [(a.xMm + b.xMm) / 2, (a.yMm + b.yMm) / 2, 0];
  const zMm = f / pxPerMm;
  const seen: Vec3 = [(((a.xPx + b.xPx) / 2 - cx) / f) * zMm, (((a.yPx + b.yPx) / 2 - cy) / f) * zMm, zMm];
  const tilts = [
    [0, 0],
    [0.4, 0],
    [-0.4, 0],
    [0, 0.4],
    [0, -0.4],
  ] as const;
  return tilts.map(([aboutX, aboutY]) => {
    const tilt = multiply(rotationAbout(0, aboutX), rotationAbout(1, aboutY));
    const rotation = multiply(tilt, rotationAbout(2, turn));
    const turned = rotate(rotation, middle);
    const translation: Vec3 = [seen[0] - turned[0], seen[1] - turned[1], seen[2] - turned[2]];
    return { rotation, translation };
  });
}

type Block = { readonly at: number; readonly d: readonly number[] };

function equationsAt(bundle: Bundle, rotations: readonly Mat3[], x: Float64Array): Equations {
  const { pictures, sigmaPx, cameraPriors = [] } = bundle;
  const rows = 2 * pictures.flat().length + cameraPriors.length;
  const equations = new Equations(x.length, { rows, entries: rows * (CAMERA_UNKNOWNS + POSE_UNKNOWNS + 2) });
  const close = (blocks: readonly Block[], off: number, sigma: number, group: 'marks' | 'camera'): void => {
    for (const { at, d } of blocks)
      for (const [k, value] of d.entries()) equations.add(at + k, value / sigma);
    equations.close(off / sigma, group);
  };
  let nextFree = CAMERA_UNKNOWNS + pictures.length * POSE_UNKNOWNS;
  for (const [i, sights] of pictures.entries()) {
    const at = CAMERA_UNKNOWNS + i * POSE_UNKNOWNS;
    const pose = poseAt(x, at, rotations[i] as Mat3);
    for (const { xMm, yMm, zMm = 0, xPx, yPx, free } of sights) {
      const place = free ? nextFree : null;
      if (free) nextFree += 2;
      const [px, py] = place === null ? [xMm, yMm] : [x[place] as number, x[place + 1] as number];
      const { turned, camera } = transformed(pose, [px, py, zMm]);
      const p = project(x, 0, camera);
      const coordinates = [
        [p.uByPoint, p.uByCamera, p.u - xPx],
        [p.vByPoint, p.vByCamera, p.v - yPx],
      ] as const;
      for (const [byPoint, byCamera, offPx] of coordinates) {
        const own = place === null ? [] : [{ at: place, d: byChamberPoint(pose, byPoint).slice(0, 2) }];
        const blocks = [
          { at: 0, d: byCamera },
          { at, d: byRotation(pose, turned, byPoint) },
          { at: at + 3, d: byPoint },
          ...own,
        ];
        close(blocks, offPx, sigmaPx, 'marks');
      }
    }
  }
  for (const [k, { mean, sigma }] of cameraPriors.entries())
    close([{ at: k, d: [1] }], (x[k] as number) - mean, sigma, 'camera');
  return equations;
}
