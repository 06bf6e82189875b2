/**
 * How a wrench that turns on a hex is seen: from its direction and length in the picture to its angle in its own plane.
 *
 * Model    the circle of the wrench, seen from a direction tilted by t off its axis, is an ellipse; d: the picture direction in which the
 *          far side of the circle lies. For an angle a of the wrench, counted from d in its own plane:
 *            direction b in the picture   tan(b - d) = tan a / cos t
 *            length over focal length     q = p r / (1 + p sin t cos a),  r^2 = cos^2 t cos^2 a + sin^2 a
 *            so the wrench's length over its distance is  p = q / (r - q sin t cos a)
 *          The direction holds for any pinhole camera, also to the side of the picture (lines through one point go as the picture of
 *          that point's surroundings goes, which is such an ellipse); t then is that ellipse's, not the plain angle of sight.
 *          The camera's direction of view changed by s about some axis across it: b changes by s (sin t cos a / r) / sqrt 2, root mean
 *          square.
 *          Tilt unknown: every d alike; t by solid angle, times exp(-t^2 / (2 (20 deg)^2)): whoever is asked to look at the end of the hex
 *          stands mostly within 20 degrees of it (common practice, no source), and nobody beyond MOST_TILT.
 * Assumes  tilt at most MOST_TILT: the picture is taken at the end of the hex
 * Fails    never; a length that no p explains is held at the longest one that is
 * Source   own derivation
 */
import { radFromDeg } from '../basics/units.ts';

export type HexSight = {
  readonly tiltRad: number;
  readonly farRad: number;
  /** Before anything was seen. */
  readonly weight: number;
};

export const MOST_TILT_RAD = radFromDeg(42);

const USUAL_TILT_RAD = radFromDeg(20);
const TILTS = 21;
const DIRECTIONS = 48;

/** Every way it can be seen where nothing is known: two degrees of tilt, seven and a half of direction apart. */
export const ANY_SIGHT: readonly HexSight[] = Array.from({ length: TILTS }, (_tilt, i) => {
  const tiltRad = ((i + 0.5) / TILTS) * MOST_TILT_RAD;
  return Array.from({ length: DIRECTIONS }, (_direction, j) => ({
    tiltRad,
    farRad: ((j + 0.5) / DIRECTIONS) * 2 * Math.PI,
    weight: Math.sin(tiltRad) * Math.exp(-0.5 * (tiltRad / USUAL_TILT_RAD) ** 2),
  }));
}).flat();

export type SeenTurn = {
  /** In the wrench's own plane; clockwise as the picture shows it. */
  readonly angleRad: number;
  /** Of that angle by the direction in the picture. */
  readonly byDirection: number;
  /** Logarithm of the wrench's length over its distance. */
  readonly lnLength: number;
  /** Change of the direction in the picture by a change of the direction of view, root mean square over its axes. */
  readonly bySway: number;
};

const LEAST_DEPTH = 0.05;

/** In pictures y points down: angles that grow turn clockwise. */
export function turnSeen(directionRad: number, lengthOverFocal: number, sight: HexSight): SeenTurn {
  const { tiltRad, farRad } = sight;
  const [cosTilt, sinTilt] = [Math.cos(tiltRad), Math.sin(tiltRad)];
  const b = directionRad - farRad;
  const [along, across] = [Math.cos(b), Math.sin(b)];
  const a = Math.atan2(across, along / cosTilt);
  const [cosA, sinA] = [Math.cos(a), Math.sin(a)];
  const r = Math.hypot(cosTilt * cosA, sinA);
  return {
    angleRad: a + farRad,
    byDirection: cosTilt / (along ** 2 + (cosTilt * across) ** 2),
    lnLength: Math.log(lengthOverFocal / Math.max(LEAST_DEPTH, r - lengthOverFocal * sinTilt * cosA)),
    bySway: Math.abs((sinTilt * cosA) / r) * Math.SQRT1_2,
  };
}
