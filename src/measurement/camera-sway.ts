/**
 * How far the camera moved aside while it filmed: what shows depth.
 *
 * Model    places of the camera -R^T t, their parts across the mean direction of view; from the one farthest from the first to the one
 *          farthest from that
 */
import { cameraPlace } from '../adjustment/pose.ts';
import { dot, unit, type Vec3 } from '../basics/rotation.ts';
import type { FixedPose } from './frame-pose.ts';

export function cameraSwayMm(poses: readonly FixedPose[]): number {
  const view = unit(sumOf(poses.map(({ rotation }) => [rotation[6], rotation[7], rotation[8]] as const)));
  const places = poses.map((pose) => across(cameraPlace(pose), view));
  const [first] = places;
  if (!first) return 0;
  const end = farthest(places, first);
  return apart(farthest(places, end), end);
}

function across(place: Vec3, view: Vec3): Vec3 {
  const along = dot(place, view);
  return [place[0] - along * view[0], place[1] - along * view[1], place[2] - along * view[2]];
}

const sumOf = (all: readonly Vec3[]): Vec3 =>
  all.reduce((sum, each) => [sum[0] + each[0], sum[1] + each[1], sum[2] + each[2]], [0, 0, 0]);

const apart = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

const farthest = (all: readonly Vec3[], from: Vec3): Vec3 =>
  all.reduce((best, each) => (apart(each, from) > apart(best, from) ? each : best), from);
