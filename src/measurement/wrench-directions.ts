/**
 * Direction and length of the wrench in each picture, turned by what the arm says the camera turned.
 *
 * Model    direction_i = atan2(tip - centre) - (arm_i - arm_0), arm = atan2(pin - camshaft end), always: nothing but what the pictures
 *          show says that the camera did not turn; u by the marks at right angles to each length, and where the camera did not stand
 *          still by what another direction of view makes of wrench and arm. The lengths are compared as they are where the camera stood
 *          still, else over the arm's.
 *          After the last application the wrench may have been put over on the hex: what is over PUT_OVER away from the first picture of
 *          its number tells the length another way round, and no turn.
 * Assumes  y down; the arm comes back to its place with each release
 * Fails    never; a length of nothing gives an endless u
 */
import { radFromDeg } from '../basics/units.ts';
import { type SeenWrench, wrenchSeen } from './hex-sight.ts';

export type MarkedPoint = { readonly xPx: number; readonly yPx: number; readonly sigmaPx: number };

export type WrenchPicture = {
  readonly applicationsBefore: number;
  readonly focalPx: number;
  /** Standard deviation of its logarithm. */
  readonly uLnFocal: number;
  /** Where the lens looks: the middle of the picture. */
  readonly middlePx: readonly [x: number, y: number];
  readonly centre: MarkedPoint;
  readonly tip: MarkedPoint;
  readonly arm: { readonly pin: MarkedPoint; readonly camshaft: MarkedPoint } | null;
};

export type ArmedPicture = WrenchPicture & { readonly arm: NonNullable<WrenchPicture['arm']> };

export type Direction = {
  readonly applicationsBefore: number;
  readonly directionRad: number;
  readonly uRad: number;
  /** Change of the direction of view against the others, standard deviation. */
  readonly swayRad: number;
  /** Hex and wrench end, turned back by what the camera rolled. */
  readonly seen: SeenWrench;
  /** The arm's, where it tells near from far: what the wrench's is counted from. */
  readonly lnScale: number;
  readonly uLnLength: number;
  /** On the hex otherwise than in the pictures before: of no turn. */
  readonly putOver: boolean;
};

/** A hand comes back to the same place within 3 cm at 70 cm (common practice, no source). */
const SWAY_RAD = 0.043;
/** The arm may lean towards the camera by up to 55 degrees; over the axes that a view can change about. */
const ARM_SLOPE = Math.tan(radFromDeg(55)) * Math.SQRT1_2;
/** Of the wrench's length: not quite the same spot of it, a lens that is no pinhole. */
const SAME_SPOT = 0.008;
/** Between two flats of a hex, or two notches of a ring, there are 30 degrees or more; nothing rocks by half of that. */
const PUT_OVER_RAD = radFromDeg(15);

export function directionsSeen(
  pictures: readonly ArmedPicture[],
  cameraStood: boolean,
): readonly Direction[] {
  const first = pictures[0] ? armOf(pictures[0]).directionRad : 0;
  const seen = pictures.map((picture): Direction => {
    const { applicationsBefore, focalPx, middlePx, centre, tip } = picture;
    const [wrench, arm] = [between(centre, tip), armOf(picture)];
    const uSpot = Math.hypot(wrench.uRad, SAME_SPOT);
    const swayRad = cameraStood ? 0 : SWAY_RAD;
    const rollRad = arm.directionRad - first;
    const [cos, sin] = [Math.cos(rollRad) / focalPx, Math.sin(rollRad) / focalPx];
    const back = ({ xPx, yPx }: MarkedPoint) => {
      const [x, y] = [xPx - middlePx[0], yPx - middlePx[1]];
      return [cos * x + sin * y, cos * y - sin * x] as const;
    };
    return {
      applicationsBefore,
      seen: wrenchSeen(back(centre), back(tip)),
      directionRad: wrench.directionRad - rollRad,
      uRad: Math.hypot(wrench.uRad, arm.uRad, swayRad * ARM_SLOPE),
      swayRad,
      lnScale: cameraStood ? 0 : Math.log(arm.lengthPx / focalPx),
      uLnLength: cameraStood ? uSpot : Math.hypot(uSpot, arm.uRad, swayRad * ARM_SLOPE),
      putOver: false,
    };
  });
  return seen.map((each) => {
    const begin = seen.find(({ applicationsBefore }) => applicationsBefore === each.applicationsBefore);
    const offRad = each.directionRad - (begin ?? each).directionRad;
    return { ...each, putOver: Math.abs(Math.atan2(Math.sin(offRad), Math.cos(offRad))) > PUT_OVER_RAD };
  });
}

const armOf = ({ arm: { camshaft, pin } }: ArmedPicture) => between(camshaft, pin);

function between(from: MarkedPoint, to: MarkedPoint) {
  const [dx, dy] = [to.xPx - from.xPx, to.yPx - from.yPx];
  const lengthPx = Math.max(Math.hypot(dx, dy), 1e-6);
  return {
    directionRad: Math.atan2(dy, dx),
    uRad: Math.hypot(from.sigmaPx, to.sigmaPx) / lengthPx,
    lengthPx,
  };
}
