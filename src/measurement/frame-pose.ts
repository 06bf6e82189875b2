/**
 * Where the camera stood in one frame of a followed clip, and where the pin was.
 *
 * Model    unknowns w (rad), t (mm) of the camera's pose and px, py (mm) of the pin, from the places of what stands still (as adjusted)
 *          and of the pin: least squares (Gauss-Newton), what disagrees by more than three of its own sigmas weighted down (Huber);
 *          covariance N^-1, times the mean square of what stands still where that is above one
 * Assumes  camera and world as adjusted, the pin in its plane; frames beside each other are near each other
 * Fails    null where fewer than five still things are seen, or the steps come to no end
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { project, roomForProjection } from '../adjustment/camera.ts';
import { byChamberPoint, byRotation, POSE_UNKNOWNS, poseAt, transformed } from '../adjustment/pose.ts';
import { type Mat3, multiply, rotationFromVector, type Vec3 } from '../basics/rotation.ts';
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';
import type { FollowedPlace } from '../marks/track.ts';

/** camera_from_chamber. */
export type FixedPose = { readonly rotation: Mat3; readonly translation: Vec3 };

export type FrameSights = {
  readonly stills: readonly { readonly world: Vec3; readonly place: FollowedPlace }[];
  /** Spots that were followed with the pin, and where each lies from its centre. */
  readonly pins: readonly {
    readonly place: FollowedPlace;
    readonly offset: readonly [xMm: number, yMm: number];
  }[];
  /** In the chamber frame. */
  readonly pinZMm: number;
};

export type FramePose = {
  readonly pose: FixedPose;
  readonly pin: { readonly xMm: number; readonly yMm: number; readonly covariance: readonly number[] } | null;
  /** Weighted squares of what stands still, and how many of them are free. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
};

const LEAST_STILLS = 5;
/** Where things disagree the weights come to rest slowly: a dozen mostly do, a hundred at worst. */
const ROUNDS = 200;
const HUBER = 3;
const ENOUGH_MM = 1e-4;

export function framePose(
  { best, layout }: Adjustment,
  camera: number,
  from: FixedPose,
  pinFrom: readonly [number, number],
  sights: FrameSights,
): FramePose | null {
  if (sights.stills.length < LEAST_STILLS) return null;
  const cameraAt = layout.cameras[camera] as number;
  const hasPin = sights.pins.length > 0;
  const size = POSE_UNKNOWNS + (hasPin ? 2 : 0);
  const room = roomForProjection();
  let { rotation, translation } = from;
  let [px, py] = pinFrom;
  for (let round = 0; round < ROUNDS; round++) {
    const pose = poseAt([0, 0, 0, ...translation], 0, rotation);
    const normal = new Float64Array(size * size);
    const right = new Float64Array(size);
    let chiSquare = 0;
    const add = (world: Vec3, place: FollowedPlace, isPin: boolean): void => {
      const { turned, camera: point } = transformed(pose, world);
      const seen = project(best.x, cameraAt, point, room);
      const off = [seen.u - place.xPx, seen.v - place.yPx] as const;
      const size2 = Math.hypot(...off) / place.sigmaPx;
      const weight = Math.min(1, HUBER / size2) / place.sigmaPx ** 2;
      if (!isPin) chiSquare += weight * (off[0] ** 2 + off[1] ** 2);
      for (const axis of [0, 1] as const) {
        const g = axis === 0 ? seen.uByPoint : seen.vByPoint;
        const slopes = [...byRotation(pose, turned, g), ...g];
        if (isPin) slopes.push(...byChamberPoint(pose, g).slice(0, 2));
        for (const [i, a] of slopes.entries()) {
          right[i] = (right[i] as number) - weight * a * off[axis];
          for (let j = 0; j <= i; j++)
            normal[i * size + j] = (normal[i * size + j] as number) + weight * a * (slopes[j] as number);
        }
      }
    };
    for (const { world, place } of sights.stills) add(world, place, false);
    for (const { place, offset } of sights.pins)
      add([px + offset[0], py + offset[1], sights.pinZMm], place, true);
    const factor = choleskyFactor(normal, size);
    if (!factor) return null;
    const step = choleskySolve(factor, size, right);
    const at = (i: number) => step[i] as number;
    rotation = multiply(rotationFromVector([at(0), at(1), at(2)]), rotation);
    translation = [translation[0] + at(3), translation[1] + at(4), translation[2] + at(5)];
    if (hasPin) [px, py] = [px + at(6), py + at(7)];
    if (!step.every(Number.isFinite)) return null;
    if (Math.max(...step.subarray(3).map(Math.abs)) > ENOUGH_MM) continue;
    const degreesOfFreedom = 2 * sights.stills.length - POSE_UNKNOWNS;
    const widened = Math.max(1, chiSquare / degreesOfFreedom);
    const inverse = inverseFromLower(lowerInverse(factor, size), size);
    const covariance = [6, 7].flatMap((i) => [6, 7].map((j) => widened * (inverse[i * size + j] as number)));
    return {
      pose: { rotation, translation },
      pin: hasPin ? { xMm: px, yMm: py, covariance } : null,
      chiSquare,
      degreesOfFreedom,
    };
  }
  return null;
}
