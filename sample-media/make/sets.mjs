// @ts-check
/** The invented wheel ends, how the camera stood and how the tape was held. */

import { inspectionSets } from './sets-inspection.mjs';

/** @typedef {import('./camera.mjs').Lens} Lens @typedef {import('./camera.mjs').Stand} Stand @typedef {import('./tape.mjs').Hold} Hold */
/**
 * @typedef {{ stand: Stand, hold?: Hold, takenAt: string }} Shot
 * @typedef {{
 *   name: string, title: string, kind: 'pair' | 'clip', nearZ: 1 | -1, downY: 1 | -1, seed: number,
 *   wheelEnd: import('./mechanism.mjs').WheelEnd, strokeMm: number, freeStrokeMm?: number,
 *   overStroke: { shownFromStrokeMm: number, lengthMm: number },
 *   pinSide: 'cotter' | 'head', lugTurnDeg: number, axleFromCamshaftMm: [number, number], lens: Lens, keyLight: [number, number, number],
 *   released: Shot, pulled?: Shot, applied: Shot, newAdjuster?: boolean, exposure?: number, jpegQuality?: number, depth?: number,
 * }} MediaSet
 */

/** @type {Lens} */
const photoLens = { widthPx: 4032, heightPx: 3024, focalPx: 3021.4, principalPx: [2023.6, 1506.8] };

/** @type {Lens} */
const smallPhotoLens = { widthPx: 3024, heightPx: 2268, focalPx: 2266.2, principalPx: [1517.9, 1129.6] };

/** @type {MediaSet[]} */
export const sets = [
  ...inspectionSets,
  {
    name: 'pair-tape',
    title: 'Gravel trailer GT-14, axle 2 left: photo pair with a steel tape',
    kind: 'pair',
    nearZ: -1,
    downY: 1,
    seed: 1401,
    wheelEnd: {
      camshaftMm: [171.4, 136.9],
      armLengthMm: 139.7,
      releasedPinXmm: 131.2,
      innerEndBehindFaceMm: 85,
    },
    strokeMm: 42.87,
    overStroke: { shownFromStrokeMm: 49.2, lengthMm: 25 },
    pinSide: 'cotter',
    lugTurnDeg: 14,
    axleFromCamshaftMm: [92, 146],
    keyLight: [1150, -640, -520],
    lens: photoLens,
    released: {
      stand: { aim: [112, 42, 0], distanceMm: 742, yawDeg: 15.5, liftDeg: 4.5, rollDeg: -2.1 },
      hold: { zero: [0.5, -15.2, -26.5], inPlaneDeg: -1.4, outOfPlaneDeg: 2.3, twistDeg: 5 },
      takenAt: '2026:05:12 09:41:07',
    },
    applied: {
      stand: { aim: [124, 30, 0], distanceMm: 718, yawDeg: 18.6, liftDeg: -3.2, rollDeg: 3.4 },
      hold: { zero: [0.4, -16.4, -24.6], inPlaneDeg: -2.7, outOfPlaneDeg: -1.6, twistDeg: -6 },
      takenAt: '2026:05:12 09:42:31',
    },
  },
  {
    name: 'clip-tape',
    title: 'Gravel trailer GT-14, axle 3 right: hand-held clip with a steel tape',
    kind: 'clip',
    nearZ: -1,
    downY: -1,
    seed: 1402,
    wheelEnd: {
      camshaftMm: [174.6, 135.4],
      armLengthMm: 139.7,
      releasedPinXmm: 127.4,
      innerEndBehindFaceMm: 85,
    },
    strokeMm: 57.34,
    overStroke: { shownFromStrokeMm: 48.6, lengthMm: 25 },
    pinSide: 'cotter',
    lugTurnDeg: -18,
    axleFromCamshaftMm: [148, 84],
    keyLight: [-1500, -40, -800],
    lens: { widthPx: 1920, heightPx: 1080, focalPx: 1462, principalPx: [963.2, 537.4] },
    released: {
      stand: { aim: [96, 40, 0], distanceMm: 762, yawDeg: 10.5, liftDeg: 3.1, rollDeg: 1.2 },
      hold: { zero: [0.4, -15.8, -25.8], inPlaneDeg: -1.7, outOfPlaneDeg: 1.8, twistDeg: 4 },
      takenAt: '2026:05:12 10:06:44',
    },
    applied: {
      stand: { aim: [96, 40, 0], distanceMm: 762, yawDeg: 10.5, liftDeg: 3.1, rollDeg: 1.2 },
      hold: { zero: [0.4, -15.8, -25.8], inPlaneDeg: -1.7, outOfPlaneDeg: 1.8, twistDeg: 4 },
      takenAt: '2026:05:12 10:06:44',
    },
  },
  {
    name: 'pair-band',
    title: 'Gravel trailer GT-09, axle 1 right: photo pair, clamp band as the only reference',
    kind: 'pair',
    nearZ: 1,
    downY: 1,
    seed: 903,
    wheelEnd: {
      camshaftMm: [181.2, 136.2],
      armLengthMm: 139.7,
      releasedPinXmm: 138.3,
      innerEndBehindFaceMm: 85,
    },
    strokeMm: 49.92,
    overStroke: { shownFromStrokeMm: 47.3, lengthMm: 25 },
    pinSide: 'head',
    lugTurnDeg: 22,
    axleFromCamshaftMm: [80, 152],
    keyLight: [-1000, -600, -1000],
    lens: smallPhotoLens,
    released: {
      stand: { aim: [92, 36, 0], distanceMm: 716, yawDeg: 30.5, liftDeg: 5.2, rollDeg: 2.4 },
      takenAt: '2026:05:13 13:18:52',
    },
    applied: {
      stand: { aim: [100, 28, 0], distanceMm: 701, yawDeg: 28.2, liftDeg: -2.4, rollDeg: -3.1 },
      takenAt: '2026:05:13 13:20:15',
    },
  },
];
