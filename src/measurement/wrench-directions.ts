/**
 * Direction and length of the wrench in each picture, turned by what the arm says the camera turned.
 *
 * Model    direction_i = atan2(tip - centre) - (arm_i - arm_0), arm = atan2(pin - camshaft end); u by the marks at right angles to each
 *          length, and where the camera is held by hand by what another direction of view makes of wrench and arm. The lengths are
 *          compared as they are where the camera stood still, else over the arm's.
 * Assumes  y down
 * Fails    never; a length of nothing gives an endless u
 */
import { radFromDeg } from '../basics/units.ts';

export type MarkedPoint = { readonly xPx: number; readonly yPx: number; readonly sigmaPx: number };

export type WrenchPicture = {
  readonly applicationsBefore: number;
  readonly focalPx: number;
  readonly centre: MarkedPoint;
  readonly tip: MarkedPoint;
  readonly arm: { readonly pin: MarkedPoint; readonly camshaft: MarkedPoint } | null;
};

export type Direction = {
  readonly applicationsBefore: number;
  readonly directionRad: number;
  readonly uRad: number;
  /** Change of the direction of view against the others, standard deviation. */
  readonly swayRad: number;
  /** Of the wrench in the picture. */
  readonly lengthOverFocal: number;
  /** The arm's, where it tells near from far: what the wrench's is counted from. */
  readonly lnScale: number;
  readonly uLnLength: number;
};

/** A hand comes back to the same place within 3 cm at 70 cm (common practice, no source). */
const SWAY_RAD = 0.043;
/** The arm may lean towards the camera by up to 55 degrees; over the axes that a view can change about. */
const ARM_SLOPE = Math.tan(radFromDeg(55)) * Math.SQRT1_2;
/** Of the wrench's length: not quite the same spot of it, a lens that is no pinhole. */
const SAME_SPOT = 0.008;

export function directionsSeen(
  pictures: readonly WrenchPicture[],
  cameraStill: boolean,
): readonly Direction[] {
  const firstArm = pictures[0]?.arm;
  const first = firstArm && !cameraStill ? between(firstArm.camshaft, firstArm.pin).directionRad : 0;
  return pictures.map(({ applicationsBefore, focalPx, centre, tip, arm }): Direction => {
    const wrench = between(centre, tip);
    const uSpot = Math.hypot(wrench.uRad, SAME_SPOT);
    const seen = { applicationsBefore, lengthOverFocal: wrench.lengthPx / focalPx };
    const { directionRad, uRad } = wrench;
    if (!arm || cameraStill) return { ...seen, directionRad, uRad, swayRad: 0, lnScale: 0, uLnLength: uSpot };
    const held = between(arm.camshaft, arm.pin);
    return {
      ...seen,
      directionRad: directionRad - (held.directionRad - first),
      uRad: Math.hypot(uRad, held.uRad, SWAY_RAD * ARM_SLOPE),
      swayRad: SWAY_RAD,
      lnScale: Math.log(held.lengthPx / focalPx),
      uLnLength: Math.hypot(uSpot, held.uRad, SWAY_RAD * ARM_SLOPE),
    };
  });
}

function between(from: MarkedPoint, to: MarkedPoint) {
  const [dx, dy] = [to.xPx - from.xPx, to.yPx - from.yPx];
  const lengthPx = Math.max(Math.hypot(dx, dy), 1e-6);
  return {
    directionRad: Math.atan2(dy, dx),
    uRad: Math.hypot(from.sigmaPx, to.sigmaPx) / lengthPx,
    lengthPx,
  };
}
