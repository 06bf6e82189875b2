/**
 * How a wrench that turns on a hex is seen: from hex and wrench end in the picture to the wrench's angle in its own plane.
 *
 * Model    pinhole. Rays c to the hex and r to the wrench's end, in the frame (e1, e2, l) of the line of sight to the hex, e1 along the
 *          picture's x: c = (0, 0, C), r = (r1, r2, r3). The plane in which the wrench turns goes through the hex, its normal n tilted by
 *          t off the line of sight, its far side in the direction f:
 *            u1 = (cos t cos f, cos t sin f, sin t),  u2 = (-sin f, cos f, 0),  n = u1 x u2 = (-sin t cos f, -sin t sin f, cos t)
 *            w = r (n . c) / (n . r) - c,  angle a = atan2(w . u2, w . u1),  length over the hex's depth |w|
 *          With q^2 = cos^2 t cos^2 a + sin^2 a: the direction in the picture changes by q^2 / cos t less than the angle, and the
 *          camera's direction of view changed by s about some axis across it changes it by s (sin t cos a / q) / sqrt 2, root mean square.
 *          Tilt unknown: every f alike; t by solid angle, times exp(-t^2 / (2 (20 deg)^2)): whoever is asked to look at the end of the hex
 *          stands mostly within 20 degrees of it (common practice, no source), and nobody beyond MOST_TILT.
 * Assumes  tilt at most MOST_TILT: the picture is taken at the end of the hex
 * Fails    never; an end beyond where the plane vanishes is held at LEAST_DEPTH
 * Source   own derivation
 */
import { cross, type Vec3 } from '../basics/rotation.ts';
import { radFromDeg } from '../basics/units.ts';

export type HexSight = {
  readonly tiltRad: number;
  readonly farRad: number;
  /** Before anything was seen. */
  readonly weight: number;
  readonly cosTilt: number;
  readonly sinTilt: number;
  readonly cosFar: number;
  readonly sinFar: number;
};

const MOST_TILT_RAD = radFromDeg(42);

const USUAL_TILT_RAD = radFromDeg(20);
const TILTS = 21;
const DIRECTIONS = 48;

/** Every way it can be seen where nothing is known: two degrees of tilt, seven and a half of direction apart. */
export const ANY_SIGHT: readonly HexSight[] = Array.from({ length: TILTS }, (_tilt, i) => {
  const tiltRad = ((i + 0.5) / TILTS) * MOST_TILT_RAD;
  return Array.from({ length: DIRECTIONS }, (_direction, j) =>
    sightAt(tiltRad, ((j + 0.5) / DIRECTIONS) * 2 * Math.PI),
  );
}).flat();

export function sightAt(tiltRad: number, farRad: number): HexSight {
  const [cosTilt, sinTilt] = [Math.cos(tiltRad), Math.sin(tiltRad)];
  const weight = sinTilt * Math.exp(-0.5 * (tiltRad / USUAL_TILT_RAD) ** 2);
  return { tiltRad, farRad, weight, cosTilt, sinTilt, cosFar: Math.cos(farRad), sinFar: Math.sin(farRad) };
}

/** Those between this one and its neighbours; level 1 is of ANY_SIGHT. */
export function sightsAbout({ tiltRad, farRad }: HexSight, level: number): readonly HexSight[] {
  const apart = 3 ** -level;
  const [tilt, far] = [(apart * MOST_TILT_RAD) / TILTS, (apart * 2 * Math.PI) / DIRECTIONS];
  return [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => sightAt(tiltRad + i * tilt, farRad + j * far)));
}

/** Hex and wrench end about the line of sight to the hex: C, and r1, r2, r3 of the model. */
export type SeenWrench = {
  readonly hex: number;
  readonly along: number;
  readonly across: number;
  readonly ahead: number;
};

type Place = readonly [x: number, y: number];

/** Of places from the middle of the picture, over the focal length. */
export function wrenchSeen(centre: Place, tip: Place): SeenWrench {
  const hex = Math.hypot(centre[0], centre[1], 1);
  const sight: Vec3 = [centre[0] / hex, centre[1] / hex, 1 / hex];
  const flat = Math.hypot(sight[1], sight[2]);
  const e1: Vec3 = [flat, (-sight[0] * sight[1]) / flat, (-sight[0] * sight[2]) / flat];
  const e2 = cross(sight, e1);
  const part = (axis: Vec3) => axis[0] * tip[0] + axis[1] * tip[1] + axis[2];
  return { hex, along: part(e1), across: part(e2), ahead: part(sight) };
}

const LEAST_DEPTH = 0.05;

/** How much farther than in the picture's plane the wrench's end is. */
function depthOf({ hex, along, across, ahead }: SeenWrench, sight: HexSight): number {
  const { cosTilt, sinTilt, cosFar, sinFar } = sight;
  const least = LEAST_DEPTH * cosTilt * hex;
  return (cosTilt * hex) / Math.max(least, cosTilt * ahead - sinTilt * (cosFar * along + sinFar * across));
}

/** Logarithm of the wrench's length over its distance. */
export function lnLengthSeen(seen: SeenWrench, sight: HexSight): number {
  const depth = depthOf(seen, sight);
  const [x, y, z] = [depth * seen.along, depth * seen.across, depth * seen.ahead - seen.hex];
  return 0.5 * Math.log(Math.max(x * x + y * y + z * z, 1e-24));
}

export type SeenTurn = {
  /** In the wrench's own plane; clockwise as the picture shows it. */
  readonly angleRad: number;
  /** Of that angle by the direction in the picture. */
  readonly byDirection: number;
  /** Change of the direction in the picture by a change of the direction of view, root mean square over its axes. */
  readonly bySway: number;
};

/** In pictures y points down: angles that grow turn clockwise. */
export function turnSeen(seen: SeenWrench, sight: HexSight): SeenTurn {
  const { cosTilt, sinTilt, cosFar, sinFar, farRad } = sight;
  const depth = depthOf(seen, sight);
  const away = cosFar * seen.along + sinFar * seen.across;
  const aside = cosFar * seen.across - sinFar * seen.along;
  const a = Math.atan2(depth * aside, cosTilt * depth * away + sinTilt * (depth * seen.ahead - seen.hex));
  const q = Math.hypot(cosTilt * Math.cos(a), Math.sin(a));
  return {
    angleRad: a + farRad,
    byDirection: q ** 2 / cosTilt,
    bySway: Math.abs((sinTilt * Math.cos(a)) / q) * Math.SQRT1_2,
  };
}
