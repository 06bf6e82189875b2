// @ts-check
/**
 * Pinhole camera without distortion: x right, y down, z forward; pixel (0, 0) is the outer corner of the top-left pixel.
 *
 * Model    u = cx + f X/Z, v = cy + f Y/Z, (X, Y, Z) = cameraFromChamber (x, y, z, 1).
 */
import { add, cross, dot, radians, scale, subtract, unit } from './vectors.mjs';

/**
 * @typedef {import('./vectors.mjs').Vec3} Vec3
 * @typedef {{ widthPx: number, heightPx: number, focalPx: number, principalPx: [number, number] }} Lens
 * @typedef {{ aim: Vec3, distanceMm: number, yawDeg: number, liftDeg: number, rollDeg: number, turnXdeg?: number, turnYdeg?: number }} Stand
 * @typedef {{ eye: Vec3, right: Vec3, down: Vec3, forward: Vec3, lens: Lens }} Camera
 */

/**
 * Stand away from `aim` on the near side, `yaw` towards the clevis end, `lift` above; then turn the camera a little.
 * @param {Stand} stand @param {{ nearZ: 1 | -1, downY: 1 | -1 }} side @param {Lens} lens @returns {Camera}
 */
export function cameraAt(stand, side, lens) {
  const yaw = radians(stand.yawDeg);
  const lift = radians(stand.liftDeg);
  /** @type {Vec3} */
  const away = [
    Math.cos(lift) * Math.sin(yaw),
    -side.downY * Math.sin(lift),
    side.nearZ * Math.cos(lift) * Math.cos(yaw),
  ];
  const eye = add(stand.aim, scale(away, stand.distanceMm));
  let forward = scale(away, -1);
  let right = unit(cross([0, side.downY, 0], forward));
  let down = cross(forward, right);
  [forward, right] = turned(forward, right, radians(stand.turnXdeg ?? 0));
  [down, forward] = turned(down, forward, radians(stand.turnYdeg ?? 0));
  [right, down] = turned(right, down, radians(stand.rollDeg));
  return { eye, right, down, forward, lens };
}

/** @param {Vec3} a @param {Vec3} b @param {number} angle @returns {[Vec3, Vec3]} */
function turned(a, b, angle) {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [add(scale(a, c), scale(b, s)), add(scale(b, c), scale(a, -s))];
}

/** @param {Camera} camera */
export function cameraFromChamber({ eye, right, down, forward }) {
  return [right, down, forward].map((row) => [...row, -dot(row, eye)]);
}

/** @param {Camera} camera @param {Vec3} point @returns {[number, number]} */
export function project({ eye, right, down, forward, lens }, point) {
  const d = subtract(point, eye);
  const z = dot(d, forward);
  return [
    lens.principalPx[0] + (lens.focalPx * dot(d, right)) / z,
    lens.principalPx[1] + (lens.focalPx * dot(d, down)) / z,
  ];
}

/** @param {Camera} camera @param {Vec3} point right, down and forward of the camera, mm @returns {Vec3} */
export function chamberFromCamera({ eye, right, down, forward }, point) {
  return add(add(add(eye, scale(right, point[0])), scale(down, point[1])), scale(forward, point[2]));
}

/** @param {Camera} camera */
export function povCamera({ eye, right, down, forward, lens }) {
  const { widthPx, heightPx, focalPx, principalPx } = lens;
  const shift = add(
    scale(right, (widthPx / 2 - principalPx[0]) / focalPx),
    scale(down, (heightPx / 2 - principalPx[1]) / focalPx),
  );
  return `camera { perspective location ${pov(eye)} direction ${pov(add(forward, shift))} right ${pov(scale(right, widthPx / focalPx))} up ${pov(scale(down, -heightPx / focalPx))} }`;
}

/** @param {readonly number[]} v */
export const pov = (v) => `<${v.map((n) => n.toFixed(9)).join(', ')}>`;
