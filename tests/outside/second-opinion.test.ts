/**
 * Camera poses and plane maps of the engine against OpenCV on the same simulated points.
 *
 * Source   OpenCV 4.13.0 as @opencvjs/node 4.13.0-release.1: solvePnP (its iterative method: least squares of the reprojection)
 *          and findHomography (all points). The points are simulated, the second solver is not ours.
 * Differs  solvePnP takes camera and points as known and has no priors: of the whole adjustment it is given the adjusted camera
 *          and the adjusted points. A homography has eight unknowns where camera and pose have six.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { adjust } from '../../src/adjustment/adjust.ts';
import type { Adjustment } from '../../src/adjustment/adjustment.ts';
import { project } from '../../src/adjustment/camera.ts';
import { derivedVariance } from '../../src/adjustment/derived.ts';
import { poseAt, transformed } from '../../src/adjustment/pose.ts';
import { worldPoint } from '../../src/adjustment/world-points.ts';
import { drawFrom } from '../../src/basics/random.ts';
import {
  type Mat3,
  multiply,
  rotate,
  rotationAbout,
  rotationFromVector,
  transpose,
  type Vec3,
} from '../../src/basics/rotation.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { type SceneOptions, simulate } from '../simulation/scene.ts';
import { type Lens, type Pixel, type SecondOpinion, secondOpinion } from './opencv-library.ts';
import { adjustBundle, type Sight } from './planar-bundle.ts';

let opencv: SecondOpinion;
beforeAll(async () => {
  opencv = await secondOpinion();
});

const LENS: Lens = { focalPx: 1500, cxPx: 1010, cyPx: 520, k1: -0.06, k2: 0.02 };
const PINHOLE: Lens = { ...LENS, k1: 0, k2: 0 };
const CASES = [
  { tilts: [0.3, -0.2], turn: 0.4, depth: 0 },
  { tilts: [-0.5, 0.3], turn: -1.2, depth: 0 },
  { tilts: [0.1, 0.6], turn: 2.5, depth: 60 },
  { tilts: [0.4, 0.2], turn: 0.1, depth: 120 },
] as const;

function unknownsOf({ focalPx, cxPx, cyPx, k1, k2 }: Lens): readonly number[] {
  return [Math.log(focalPx), cxPx, cyPx, k1, k2];
}

/** 6 x 5 points 40 mm apart, seen from 700 mm; with a depth every third stands out of the plane. */
function sightsOf(seed: number, lens: Lens, noisePx: number) {
  const { tilts, turn, depth } = CASES[seed % CASES.length] as (typeof CASES)[number];
  const tilt = multiply(rotationAbout(0, tilts[0]), rotationAbout(1, tilts[1]));
  const rotation = multiply(tilt, rotationAbout(2, turn));
  const middle = rotate(rotation, [100, 80, 0]);
  const shift: Vec3 = [20 - middle[0], -15 - middle[1], 700 - middle[2]];
  const draw = drawFrom(seed);
  const sights = Array.from({ length: 30 }, (_, i): Sight => {
    const [xMm, yMm, zMm] = [40 * (i % 6), 40 * Math.floor(i / 6), i % 3 === 1 ? depth : 0];
    const [x, y, z] = rotate(rotation, [xMm, yMm, zMm]);
    const { u, v } = project(unknownsOf(lens), 0, [x + shift[0], y + shift[1], z + shift[2]]);
    return { xMm, yMm, zMm, xPx: u + draw.normal(0, noisePx), yPx: v + draw.normal(0, noisePx) };
  });
  return { sights, rotation, shift };
}

const pointsOf = (sights: readonly Sight[]): Vec3[] => sights.map((s) => [s.xMm, s.yMm, s.zMm ?? 0]);
const pixelsOf = (sights: readonly Sight[]): Pixel[] => sights.map((s) => [s.xPx, s.yPx]);

/** The small rotation vector that takes b to a. */
function turnBetween(a: Mat3, b: Mat3): Vec3 {
  const r = multiply(a, transpose(b));
  return [(r[7] - r[5]) / 2, (r[2] - r[6]) / 2, (r[3] - r[1]) / 2];
}

function ourPose(sights: readonly Sight[], lens: Lens) {
  const held = unknownsOf(lens).map((mean) => ({ mean, sigma: 1e-9 }));
  const { fitted, rotations } = adjustBundle({
    pictures: [sights],
    sigmaPx: 0.5,
    cameraStart: unknownsOf(lens),
    cameraPriors: held,
  });
  return poseAt(fitted.x, 5, rotations[0] as Mat3);
}

function offBetween(pose: { rotation: Mat3; translation: Vec3 }, other: { turn: Vec3; shift: Vec3 }) {
  return {
    rad: Math.hypot(...turnBetween(pose.rotation, rotationFromVector(other.turn))),
    mm: Math.hypot(...pose.translation.map((t, k) => t - (other.shift[k] ?? 0))),
  };
}

describe('one pose of a known camera, plane and solid points', () => {
  test.each([0, 1, 2, 3])('case %i, exact points: 1e-7 rad and 1e-4 mm', (seed) => {
    const { sights, rotation, shift } = sightsOf(seed, LENS, 0);
    const pose = ourPose(sights, LENS);
    const { rad, mm } = offBetween(pose, opencv.solvePnp(pointsOf(sights), pixelsOf(sights), LENS));
    expect(rad).toBeLessThan(1e-7);
    expect(mm).toBeLessThan(1e-4);
    expect(Math.hypot(...turnBetween(pose.rotation, rotation))).toBeLessThan(1e-7);
    expect(Math.hypot(...pose.translation.map((t, k) => t - (shift[k] ?? 0)))).toBeLessThan(1e-4);
  });

  test.each([0, 1, 2, 3, 4, 5, 6, 7])('case %i, 0.5 px of noise: the same minimum', (seed) => {
    const { sights } = sightsOf(seed, LENS, 0.5);
    const theirs = opencv.solvePnp(pointsOf(sights), pixelsOf(sights), LENS);
    const { rad, mm } = offBetween(ourPose(sights, LENS), theirs);
    expect(rad).toBeLessThan(1e-6);
    expect(mm).toBeLessThan(1e-3);
  });
});

describe('the map from the plane to the picture', () => {
  const ours = (sights: readonly Sight[]): Pixel[] => {
    const pose = ourPose(sights, PINHOLE);
    return pointsOf(sights).map((point) => {
      const { u, v } = project(unknownsOf(PINHOLE), 0, transformed(pose, point).camera);
      return [u, v];
    });
  };
  const theirs = (sights: readonly Sight[]): Pixel[] => {
    const plane = sights.map((s): Pixel => [s.xMm, s.yMm]);
    const h = opencv.findHomography(plane, pixelsOf(sights)) as Mat3;
    return plane.map(([x, y]) => {
      const [u, v, w] = rotate(h, [x, y, 1]);
      return [u / w, v / w];
    });
  };
  const farthest = (a: readonly Pixel[], b: readonly Pixel[]): number =>
    Math.max(...a.map(([x, y], i) => Math.hypot(x - (b[i]?.[0] ?? 0), y - (b[i]?.[1] ?? 0))));

  test.each([0, 1])('case %i, exact points: within 0.001 px', (seed) => {
    const { sights } = sightsOf(seed, PINHOLE, 0);
    expect(farthest(ours(sights), theirs(sights))).toBeLessThan(1e-3);
  });

  // Two unknowns more fit some of the noise: of 30 points a share of sqrt(2 / 60) of 0.5 px on the average.
  test.each([0, 1, 4, 5])('case %i, 0.5 px of noise: within the noise', (seed) => {
    const { sights } = sightsOf(seed, PINHOLE, 0.5);
    expect(farthest(ours(sights), theirs(sights))).toBeLessThan(0.5);
  });
});

/** The adjusted pose of a view, and solvePnP's from the adjusted points and camera. */
function posesOf(adjustment: Adjustment, viewIndex: number) {
  const { problem, layout, best } = adjustment;
  const view = problem.views[viewIndex] as (typeof problem.views)[number];
  const at = layout.poses[view.pose] as number;
  const pose = poseAt(best.x, at, best.start.rotations[view.pose] as Mat3);
  const camera = layout.cameras[view.camera] as number;
  const [lnF = 0, cxPx = 0, cyPx = 0, k1 = 0, k2 = 0] = best.x.subarray(camera, camera + 5);
  const seen = view.marks.flatMap((mark) => {
    const place = worldPoint(mark, { state: view.state, index: viewIndex }, best.x, layout, problem.hand);
    return place ? [{ at: place.at, pixel: [mark.xPx, mark.yPx] as const }] : [];
  });
  const other = opencv.solvePnp(
    seen.map((s) => s.at),
    seen.map((s) => s.pixel),
    { focalPx: Math.exp(lnF), cxPx, cyPx, k1, k2 },
  );
  return { at, pose, other };
}

function adjusted(options: SceneOptions): Adjustment {
  const problem = problemFromViews(simulate(options).input);
  if (!problem.ok) throw new Error(problem.failure.code);
  const result = adjust(problem.value);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

describe('the pose of a whole adjusted wheel end', () => {
  const SCENE = { sigmaPx: 1, rodMarks: true, offSquareDeg: 15, distanceMm: [450, 700] } as const;
  const scenes = ([1, 2, 3] as const).flatMap((seed) =>
    (['tape', 'tape+band'] as const).map((reference) => ({ ...SCENE, seed, reference })),
  );

  test.each(scenes)(
    '$reference, seed $seed, marks of 1 px: every component within a twentieth of its u',
    (scene) => {
      const adjustment = adjusted(scene);
      for (const viewIndex of adjustment.problem.views.keys()) {
        const { at, pose, other } = posesOf(adjustment, viewIndex);
        const turn = turnBetween(pose.rotation, rotationFromVector(other.turn));
        const shift = pose.translation.map((t, k) => t - (other.shift[k] ?? 0));
        for (const [k, off] of [...turn, ...shift].entries()) {
          const u = Math.sqrt(derivedVariance(adjustment, [{ index: at + k, d: 1 }]).variance);
          expect(Math.abs(off)).toBeLessThan(u / 20);
        }
      }
    },
  );
});
