// @ts-check
import { cameraFromChamber, project } from './camera.mjs';
import { facePoint, rodAxisPoint, stateAt } from './mechanism.mjs';
import { clampBandDiameterMm, clampBandPoint } from './parts-chamber.mjs';
import { camshaftEndMm, clevisBackMm, pinEnd } from './parts-linkage.mjs';
import { graduations } from './tape.mjs';

/**
 * @typedef {import('./vectors.mjs').Vec3} Vec3
 * @typedef {{ mm: Vec3, px: [number, number] }} Point
 * @typedef {ReturnType<typeof allPoints>} Points
 */

/** @param {number} value @param {number} digits */
export const rounded = (value, digits) => Number(value.toFixed(digits));

/** @param {import('./camera.mjs').Camera} camera @param {Vec3} mm @returns {Point} */
function seen(camera, mm) {
  const px = project(camera, mm);
  return {
    mm: /** @type {Vec3} */ (mm.map((v) => rounded(v, 3))),
    px: [rounded(px[0], 3), rounded(px[1], 3)],
  };
}

/** @param {import('./sets.mjs').MediaSet} set @param {import('./camera.mjs').Camera} camera @param {number} strokeMm */
export function markPoints(set, camera, strokeMm) {
  const state = stateAt(set.wheelEnd, strokeMm);
  const [cx, cy] = set.wheelEnd.camshaftMm;
  return {
    chamberFace: seen(camera, facePoint(state, camera.eye)),
    clevisPin: seen(camera, [state.pin[0], state.pin[1], set.nearZ * pinEnd[set.pinSide]]),
    camshaftEnd: seen(camera, [cx, cy, set.nearZ * camshaftEndMm]),
  };
}

/** @param {import('./sets.mjs').MediaSet} set @param {import('./camera.mjs').Camera} camera @param {number} strokeMm @param {import('./tape.mjs').Hold | undefined} hold */
export function allPoints(set, camera, strokeMm, hold) {
  const state = stateAt(set.wheelEnd, strokeMm);
  const plainRodMm = state.pin[0] - clevisBackMm;
  const { widthPx, heightPx } = camera.lens;
  const inside = (/** @type {Point} */ { px: [u, v] }) => u > 0 && v > 0 && u < widthPx && v < heightPx;
  return {
    ...markPoints(set, camera, strokeMm),
    rodLine: [0.15, 0.5, 0.85].map((part) => seen(camera, rodAxisPoint(state, part * plainRodMm))),
    ...(hold && {
      tapeGraduations: graduations(hold)
        .map(({ inches, mm }) => ({ inches, ...seen(camera, mm) }))
        .filter(inside),
    }),
    clampBand: Array.from({ length: 24 }, (_, i) => {
      const point = seen(camera, clampBandPoint((i * Math.PI) / 12, set.nearZ));
      return { angleDeg: i * 15, ...point, visible: inside(point) };
    }),
  };
}

/** @param {import('./sets.mjs').MediaSet} set */
export function setTruth(set) {
  const released = stateAt(set.wheelEnd, 0);
  const applied = stateAt(set.wheelEnd, set.strokeMm);
  const pulled = set.freeStrokeMm === undefined ? null : stateAt(set.wheelEnd, set.freeStrokeMm);
  return {
    title: set.title,
    notMeasured: 'invented scene, rendered',
    chamber: { family: 'clamp', type: '30', strokeClass: 'standard', clampBandDiameterMm },
    armLengthMm: set.wheelEnd.armLengthMm,
    strokeMm: rounded(applied.pin[0] - released.pin[0], 3),
    ...(pulled && { freeStrokeMm: rounded(pulled.pin[0] - released.pin[0], 3) }),
    straightLineChangeMm: rounded(Math.hypot(...applied.pin) - Math.hypot(...released.pin), 3),
    armAngleReleasedDeg: rounded(released.armAngleDeg, 3),
    armAngleAppliedDeg: rounded(applied.armAngleDeg, 3),
    overStrokeMark: {
      released: 'not seen',
      applied: set.strokeMm > set.overStroke.shownFromStrokeMm ? 'seen' : 'not seen',
      shownFromStrokeMm: set.overStroke.shownFromStrokeMm,
    },
    chamberFrame: {
      axes: 'x along the chamber axis outward from the face, y towards the camshaft, z = x cross y, mm',
      zPoints: set.nearZ === -1 ? 'away from the camera' : 'towards the camera',
      camshaftMm: [...set.wheelEnd.camshaftMm, 0],
      pinReleasedMm: released.pin.map((v) => rounded(v, 3)),
      ...(pulled && { pinPulledMm: pulled.pin.map((v) => rounded(v, 3)) }),
      pinAppliedMm: applied.pin.map((v) => rounded(v, 3)),
      rodInnerEndReleasedMm: released.innerEnd.map((v) => rounded(v, 3)),
      rodInnerEndAppliedMm: applied.innerEnd.map((v) => rounded(v, 3)),
    },
  };
}

/** @param {import('./camera.mjs').Camera} camera */
export function cameraTruth(camera) {
  const { widthPx, heightPx, focalPx, principalPx } = camera.lens;
  return { widthPx, heightPx, focalPx, principalPx, cameraFromChamber: poseRows(camera) };
}

/** @param {import('./camera.mjs').Camera} camera */
export function poseRows(camera) {
  return cameraFromChamber(camera).map((row) => row.map((v, i) => rounded(v, i === 3 ? 4 : 8)));
}
