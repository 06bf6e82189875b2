/**
 * How two frames of a followed clip, one of each rest, see the plane in which the arm turns: what it takes to find where it turns about.
 *
 * Model    plane z = h depth of the chamber frame (mm) -> pixels: H = K [r1 r2 (h depth r3 + t)], row by row, from the adjusted pose of
 *          each frame; the lens's distortion left out, some tenths of a pixel that both frames share
 *          the frame of the other rest: of those within a twenty-fifth of the farthest travel the one seen from nearest to where the
 *          seed was: what lies before or behind the plane then moves least
 * Fails    null where nothing is measured, or the frames of the other rest have no pose
 */
import { adjust } from '../adjustment/adjust.ts';
import type { Adjustment } from '../adjustment/adjustment.ts';
import { cameraPlace } from '../adjustment/pose.ts';
import { CAMSHAFT_DEPTH } from '../adjustment/priors.ts';
import type { Vec3 } from '../basics/rotation.ts';
import type { Frame } from '../frames/frame.ts';
import type { Track } from '../marks/track.ts';
import type { FixedPose, FramePose } from './frame-pose.ts';
import { framePoses } from './frame-poses.ts';
import type { MeasureInput } from './measurement.ts';
import { problemFromViews } from './problem-from-views.ts';
import { seedFrame } from './still-motion.ts';

/** Row by row, mm to pixels. */
type PlaneMap = readonly [number, number, number, number, number, number, number, number, number];
type PlaceMm = readonly [number, number];

/** armPx: of the arm's near side; endPx: of the visible end of the camshaft, so much nearer to the camera. pinMm: its centre, in both planes. */
export type ArmView = { readonly armPx: PlaneMap; readonly endPx: PlaneMap; readonly pinMm: PlaceMm };
export type ArmSight = { readonly other: Frame; readonly here: ArmView; readonly there: ArmView };

/** Away from the camera, from the plane of motion, mm: common practice, no source. */
const ARM_DEPTH_MM = -12;
const AT_REST = 0.96;

/** input: with the views that came of the track. */
export function armSight(input: MeasureInput, track: Track): ArmSight | null {
  const problem = problemFromViews(input);
  const adjusted = problem.ok ? adjust(problem.value) : problem;
  if (!adjusted.ok) return null;
  const adjustment = adjusted.value;
  const poses = framePoses(adjustment, track);
  const seed = seedFrame(track);
  const seen = poses.flatMap((pose, frame) => (pose?.pin ? [{ frame, pose, xMm: pose.pin.xMm }] : []));
  const own = seen.find(({ frame }) => frame === seed);
  if (!own) return null;
  const travel = (xMm: number) => Math.abs(xMm - own.xMm);
  const farthest = Math.max(...seen.map(({ xMm }) => travel(xMm)));
  const eye = cameraPlace(own.pose.pose);
  const resting = seen
    .filter(({ xMm }) => farthest > 0 && travel(xMm) >= AT_REST * farthest)
    .map((each) => ({
      ...each,
      offMm: Math.hypot(...cameraPlace(each.pose.pose).map((v, k) => v - at(eye, k))),
    }));
  const nearest = resting.reduce<(typeof resting)[number] | null>(
    (best, each) => (best && best.offMm <= each.offMm ? best : each),
    null,
  );
  if (!nearest) return null;
  const view = (pose: FramePose): ArmView => ({
    armPx: planeMap(adjustment, track, pose.pose, ARM_DEPTH_MM),
    endPx: planeMap(adjustment, track, pose.pose, CAMSHAFT_DEPTH[0]),
    pinMm: [pose.pin?.xMm ?? 0, pose.pin?.yMm ?? 0],
  });
  return {
    other: {
      index: track.firstIndex + nearest.frame,
      timeTicks: track.timeTicks[nearest.frame] as number,
    },
    here: view(own.pose),
    there: view(nearest.pose),
  };
}

function planeMap(
  { problem, layout, best }: Adjustment,
  track: Track,
  { rotation: r, translation: t }: FixedPose,
  depthMm: number,
): PlaneMap {
  const camera = problem.views.find(({ state }) => state === track.state)?.camera ?? 0;
  const first = layout.cameras[camera] as number;
  const [f, cx, cy] = [Math.exp(at(best.x, first)), at(best.x, first + 1), at(best.x, first + 2)];
  const z = problem.hand * depthMm;
  const row = (k: 0 | 1 | 2): Vec3 => [at(r, 3 * k), at(r, 3 * k + 1), at(r, 3 * k + 2) * z + t[k]];
  const [x, y, w] = [row(0), row(1), row(2)];
  const pixels = (own: Vec3, centre: number) => own.map((v, k) => f * v + centre * at(w, k));
  return [...pixels(x, cx), ...pixels(y, cy), ...w] as unknown as PlaneMap;
}

const at = (list: ArrayLike<number>, i: number) => list[i] as number;
