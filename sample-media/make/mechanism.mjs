// @ts-check
/**
 * The wheel end as a mechanism, in the chamber frame (millimetres): origin where the chamber axis meets the
 * face plane, x along the axis outward, y in the plane of motion towards the camshaft, z = x cross y.
 *
 * Model    pin = camshaft + L (cos phi, sin phi); the rod's inner end slides on the x axis; |pin - inner end| is constant.
 * Assumes  no play; the arm points from the camshaft towards negative y, so phi = -(angle measured from +x).
 */
import { cross, degrees, dot, length, scale, subtract, unit } from './vectors.mjs';

export const rodRadiusMm = 15.875 / 2;

/**
 * @typedef {{ camshaftMm: [number, number], armLengthMm: number, releasedPinXmm: number, innerEndBehindFaceMm: number }} WheelEnd
 * @typedef {{ pin: import('./vectors.mjs').Vec3, innerEnd: import('./vectors.mjs').Vec3, armRad: number, rodRad: number, armAngleDeg: number }} State
 */

/** @param {WheelEnd} wheelEnd @param {number} strokeMm @returns {State} */
export function stateAt(wheelEnd, strokeMm) {
  const released = pinAt(wheelEnd, wheelEnd.releasedPinXmm);
  const rodLengthMm = length(subtract(released, [-wheelEnd.innerEndBehindFaceMm, 0, 0]));
  const pin = pinAt(wheelEnd, wheelEnd.releasedPinXmm + strokeMm);
  const innerX = pin[0] - Math.sqrt(rodLengthMm ** 2 - pin[1] ** 2);
  /** @type {import('./vectors.mjs').Vec3} */
  const innerEnd = [innerX, 0, 0];
  /** @type {import('./vectors.mjs').Vec3} */
  const camshaft = [wheelEnd.camshaftMm[0], wheelEnd.camshaftMm[1], 0];
  const back = subtract(innerEnd, pin);
  const arm = subtract(camshaft, pin);
  return {
    pin,
    innerEnd,
    armRad: Math.atan2(-arm[1], -arm[0]),
    rodRad: Math.atan2(-back[1], -back[0]),
    armAngleDeg: degrees(Math.atan2(length(cross(back, arm)), dot(back, arm))),
  };
}

/** @param {WheelEnd} wheelEnd @param {number} x @returns {import('./vectors.mjs').Vec3} */
function pinAt({ camshaftMm, armLengthMm }, x) {
  return [x, camshaftMm[1] - Math.sqrt(armLengthMm ** 2 - (x - camshaftMm[0]) ** 2), 0];
}

/** Where a person would mark the face: the rod's surface line nearest the camera, in the face plane. @param {State} state @param {import('./vectors.mjs').Vec3} eye @returns {import('./vectors.mjs').Vec3} */
export function facePoint(state, eye) {
  const along = unit(subtract(state.pin, state.innerEnd));
  const toEye = subtract(eye, state.pin);
  const across = unit(subtract(toEye, scale(along, dot(toEye, along))));
  const onLine = /** @type {import('./vectors.mjs').Vec3} */ (
    state.pin.map((v, i) => v + rodRadiusMm * across[i])
  );
  const back = onLine[0] / along[0];
  return [0, onLine[1] - back * along[1], onLine[2] - back * along[2]];
}

/** Point on the rod axis at a given x. @param {State} state @param {number} x @returns {import('./vectors.mjs').Vec3} */
export function rodAxisPoint(state, x) {
  const t = (x - state.innerEnd[0]) / (state.pin[0] - state.innerEnd[0]);
  return [x, state.pin[1] * t, 0];
}
