// @ts-check
/** The wheel ends of the demo inspection, gravel trailer GT-21: smaller photos, so that the whole walk-round loads quickly. */

/** @type {import('./camera.mjs').Lens} */
const lens = { widthPx: 2400, heightPx: 1800, focalPx: 1798.4, principalPx: [1204.3, 896.9] };

/** Axle 2 left is one wheel end before and after its repair: the rod comes back to the same place. */
const axle2Left = {
  kind: /** @type {const} */ ('pair'),
  nearZ: /** @type {const} */ (-1),
  downY: /** @type {const} */ (1),
  seed: 2102,
  wheelEnd: {
    camshaftMm: /** @type {[number, number]} */ ([176.2, 136.5]),
    armLengthMm: 139.7,
    releasedPinXmm: 129.4,
    innerEndBehindFaceMm: 85,
  },
  overStroke: { shownFromStrokeMm: 49.5, lengthMm: 25 },
  pinSide: /** @type {const} */ ('cotter'),
  lugTurnDeg: -11,
  axleFromCamshaftMm: /** @type {[number, number]} */ ([90, 148]),
  lens,
  jpegQuality: 80,
  depth: 2,
};

/** @type {import('./sets.mjs').MediaSet[]} */
export const inspectionSets = [
  {
    ...axle2Left,
    name: 'inspection/axle-2-left-found',
    title: 'Gravel trailer GT-21, axle 2 left as found: photo pair with a steel tape',
    strokeMm: 59.46,
    keyLight: [1150, -700, -420],
    released: {
      stand: { aim: [116, 42, 0], distanceMm: 706, yawDeg: 13.2, liftDeg: 5.4, rollDeg: 1.6 },
      hold: { zero: [0.5, -15.6, -26.2], inPlaneDeg: -1.9, outOfPlaneDeg: 1.4, twistDeg: 4 },
      takenAt: '2026:05:12 09:52:41',
    },
    applied: {
      stand: { aim: [128, 34, 0], distanceMm: 688, yawDeg: 17.1, liftDeg: -2.2, rollDeg: -2.4 },
      hold: { zero: [0.4, -17.2, -25.1], inPlaneDeg: -3.1, outOfPlaneDeg: -1.1, twistDeg: -5 },
      takenAt: '2026:05:12 09:54:05',
    },
  },
  {
    ...axle2Left,
    name: 'inspection/axle-2-left-repaired',
    title: 'Gravel trailer GT-21, axle 2 left after repair: photo pair with a steel tape',
    seed: 2103,
    strokeMm: 41.73,
    newAdjuster: true,
    keyLight: [600, -900, -900],
    exposure: 1.6,
    released: {
      stand: { aim: [118, 44, 0], distanceMm: 668, yawDeg: 19.4, liftDeg: -1.8, rollDeg: 2.7 },
      hold: { zero: [0.4, -15.1, -26.4], inPlaneDeg: -1.2, outOfPlaneDeg: 1.9, twistDeg: 3 },
      takenAt: '2026:05:12 14:17:18',
    },
    applied: {
      stand: { aim: [122, 38, 0], distanceMm: 652, yawDeg: 14.8, liftDeg: 4.1, rollDeg: -1.3 },
      hold: { zero: [0.5, -16.5, -25.3], inPlaneDeg: -2.5, outOfPlaneDeg: 0.8, twistDeg: -4 },
      takenAt: '2026:05:12 14:18:52',
    },
  },
  {
    name: 'inspection/axle-2-right',
    title: 'Gravel trailer GT-21, axle 2 right: released, pulled by a bar and applied, with a steel tape',
    kind: 'pair',
    nearZ: 1,
    downY: 1,
    seed: 2104,
    wheelEnd: {
      camshaftMm: [175.1, 136.8],
      armLengthMm: 139.7,
      releasedPinXmm: 130.8,
      innerEndBehindFaceMm: 85,
    },
    strokeMm: 43.28,
    freeStrokeMm: 13.64,
    overStroke: { shownFromStrokeMm: 49.7, lengthMm: 25 },
    pinSide: 'cotter',
    lugTurnDeg: 16,
    axleFromCamshaftMm: [90, 148],
    keyLight: [-1100, -620, -560],
    lens,
    jpegQuality: 80,
    depth: 2,
    released: {
      stand: { aim: [114, 40, 0], distanceMm: 712, yawDeg: 14.6, liftDeg: 3.6, rollDeg: -1.9 },
      hold: { zero: [0.5, -15.4, 26.3], inPlaneDeg: -1.5, outOfPlaneDeg: 1.6, twistDeg: 4, fromZ: 1 },
      takenAt: '2026:05:12 10:01:10',
    },
    pulled: {
      stand: { aim: [118, 38, 0], distanceMm: 698, yawDeg: 12.9, liftDeg: 4.8, rollDeg: 1.4 },
      hold: { zero: [0.4, -16.2, 25.6], inPlaneDeg: -2.1, outOfPlaneDeg: -0.9, twistDeg: -3, fromZ: 1 },
      takenAt: '2026:05:12 10:02:27',
    },
    applied: {
      stand: { aim: [124, 34, 0], distanceMm: 690, yawDeg: 16.9, liftDeg: -1.7, rollDeg: 2.6 },
      hold: { zero: [0.5, -16.8, 25.2], inPlaneDeg: -2.6, outOfPlaneDeg: 1.2, twistDeg: 5, fromZ: 1 },
      takenAt: '2026:05:12 10:04:02',
    },
  },
  {
    name: 'inspection/axle-1-right',
    title: 'Gravel trailer GT-21, axle 1 right: photo pair, clamp band as the only reference',
    kind: 'pair',
    nearZ: 1,
    downY: 1,
    seed: 2101,
    wheelEnd: {
      camshaftMm: [178.6, 136.3],
      armLengthMm: 139.7,
      releasedPinXmm: 134.2,
      innerEndBehindFaceMm: 85,
    },
    strokeMm: 50.18,
    overStroke: { shownFromStrokeMm: 50.9, lengthMm: 25 },
    pinSide: 'head',
    lugTurnDeg: -20,
    axleFromCamshaftMm: [84, 150],
    keyLight: [-900, -760, -1100],
    exposure: 1.42,
    lens,
    jpegQuality: 80,
    depth: 2,
    released: {
      stand: { aim: [90, 36, 0], distanceMm: 702, yawDeg: 24.5, liftDeg: 6.1, rollDeg: -2.2 },
      takenAt: '2026:05:12 09:32:33',
    },
    applied: {
      stand: { aim: [98, 30, 0], distanceMm: 690, yawDeg: 27.2, liftDeg: -1.6, rollDeg: 1.9 },
      takenAt: '2026:05:12 09:33:56',
    },
  },
];
