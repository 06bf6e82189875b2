/**
 * Simulated wheel ends for tests and studies: the geometry is written here a second time, from the drawing and not from the
 * engine: exact arc of the pin, exact swivel of the stiff rod, pinhole camera with radial distortion.
 * Chamber frame in mm: x outwards along the chamber axis, y towards the camshaft, z = x cross y. Invented wheel ends.
 */

import { type Draw, drawFrom } from '../../src/basics/random.ts';
import type { Capture } from '../../src/captures/capture.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import type { SceneOptions } from './scene-options.ts';
import { type Camera, type CameraPose, drawCamera, drawPose, imageOf, jittered, type P3 } from './sight.ts';

export type { ReferenceKind, SceneOptions } from './scene-options.ts';

export type Scene = {
  readonly input: MeasureInput;
  readonly truth: {
    readonly strokeMm: number;
    readonly armAngleReleasedRad: number;
    readonly armAngleAppliedRad: number;
    readonly straightLineChangeMm: number;
  };
  /** Where the camera stood, by view. */
  readonly poses: readonly CameraPose[];
};

export function simulate(options: SceneOptions): Scene {
  const draw = drawFrom(options.seed);
  const drawnHand = draw.uniform(0, 1) < 0.5 ? 1 : -1;
  const hand = options.hand ?? drawnHand;
  const scatter = options.typical ? withoutScatter(draw) : draw;
  const wheelEnd = drawWheelEnd({ uniform: draw.uniform, normal: scatter.normal }, hand, options);
  const camera = drawCamera({ uniform: draw.uniform, normal: scatter.normal }, options);
  const states =
    options.freeStrokeMm === undefined
      ? (['released', 'applied'] as const)
      : (['released', 'applied', 'pulled'] as const);
  const firstPose = drawPose(draw, options, hand);
  const poses = states.map((_s, i) =>
    i === 0 || options.cameraStill ? firstPose : jittered(draw, firstPose),
  );
  const tapeScale = scatter.normal(0, 0.004);
  const noisePx = options.noisePx ?? options.sigmaPx;
  let nextId = 0;
  let tapeHold: TapeHold | undefined;
  const views = states.map((state, i): View => {
    const pose = poses[i] as CameraPose;
    const marks: Mark[] = [];
    const see = (at: P3): readonly [number, number] => imageOf(camera, pose, at);
    const put = (at: P3, kind: MarkedKind, readingMm?: number): void => {
      const [u, v] = see(at);
      const placed = {
        id: `m${nextId++}`,
        xPx: u + draw.normal(0, noisePx),
        yPx: v + draw.normal(0, noisePx),
        sigmaPx: options.sigmaPx,
        placedBy: 'hand' as const,
      };
      if (kind === 'tape-graduation') marks.push({ kind, readingMm: readingMm ?? 0, ...placed });
      else marks.push({ kind, ...placed });
    };
    const s = wheelEnd.states[state];
    put([0, s.rodYAtFace, hand * wheelEnd.faceDepth], 'chamber-face');
    put([s.pin[0], s.pin[1], hand * wheelEnd.pinDepth], 'clevis-pin');
    if (options.camshaft !== false)
      put([...wheelEnd.camshaft, hand * wheelEnd.camshaftDepth], 'camshaft-end');
    if (options.rodMarks)
      for (const share of [0.25, 0.6])
        put([s.pin[0] * share, s.rodYAtFace + (s.pin[1] - s.rodYAtFace) * share, 0], 'rod-line');
    if (options.reference.includes('tape')) {
      if (!tapeHold || !options.tapeUnmoved) tapeHold = drawTapeHold(scatter, tapeScale);
      putTape(tapeHold, hand, s.pin[0], put);
    }
    if (options.reference.includes('band')) putBand(draw, wheelEnd, pose, put);
    if (options.reference.includes('distance')) putDistance(scatter, hand, put);
    return { state, captureId: `c${i}`, frame: null, marks };
  });
  const captures = states.map((_s, i) => captureOf(`c${i}`, camera));
  const input: MeasureInput = {
    views,
    captures,
    cameraStill: options.cameraStill ?? false,
    cameraProfile: null,
    references: referencesOf(scatter, options, wheelEnd),
  };
  return { input, truth: wheelEnd.truth, poses };
}

/** Draws as before, so that the rest of the scene stays the same, and gives the mean of each. */
function withoutScatter(draw: Draw): Draw {
  return {
    uniform: (low, high) => {
      draw.uniform(low, high);
      return (low + high) / 2;
    },
    normal: (mean, sigma) => {
      draw.normal(mean, sigma);
      return mean;
    },
  };
}

type WheelEnd = ReturnType<typeof drawWheelEnd>;

function drawWheelEnd(draw: Draw, hand: 1 | -1, options: SceneOptions) {
  const stampedMm = [127, 139.7, 152.4, 165.1][Math.floor(draw.uniform(0, 3.999))] as number;
  const armMm = options.armMm ?? (options.typical ? 146 : stampedMm);
  const drawnBandMm = [161.93, 172.24, 183.36, 205.58][Math.floor(draw.uniform(0, 3.999))] as number;
  const bandMm = options.bandMm ?? drawnBandMm;
  const releasedX = draw.uniform(90, 180);
  const strokeMm = options.strokeMm ?? draw.uniform(25, 70);
  const innerMm = draw.normal(85, 20);
  const releasedAngle = ((95 + draw.uniform(0, 18)) * Math.PI) / 180;
  const pinY = draw.normal(0, 7);
  // Camshaft from the released pin: the arm makes the angle with the direction back along the axis.
  const camshaft = [
    releasedX - armMm * Math.cos(releasedAngle),
    pinY + armMm * Math.sin(releasedAngle),
  ] as const;
  const onArc = (x: number) => camshaft[1] - Math.sqrt(armMm ** 2 - (x - camshaft[0]) ** 2);
  const appliedX = releasedX + strokeMm;
  const appliedY = onArc(appliedX);
  const pulledX = releasedX + (options.freeStrokeMm ?? 0);
  const rodLength = Math.hypot(releasedX + innerMm, pinY);
  const stateOf = (x: number, y: number) => {
    const innerX = x - Math.sqrt(rodLength ** 2 - y ** 2);
    const rodYAtFace = (y * -innerX) / (x - innerX);
    const rod = [innerX - x, -y] as const;
    const arm = [camshaft[0] - x, camshaft[1] - y] as const;
    const angle = Math.acos((rod[0] * arm[0] + rod[1] * arm[1]) / (Math.hypot(...rod) * Math.hypot(...arm)));
    return { pin: [x, y] as const, rodYAtFace, angle };
  };
  const states = {
    released: stateOf(releasedX, pinY),
    applied: stateOf(appliedX, appliedY),
    pulled: stateOf(pulledX, onArc(pulledX)),
  };
  return {
    hand,
    armMm,
    bandMm,
    bandX: draw.normal(-55, 20),
    camshaft,
    states,
    pinDepth: draw.normal(-22, 6),
    faceDepth: draw.normal(-6, 4),
    camshaftDepth: draw.normal(-28, 12),
    truth: {
      strokeMm,
      armAngleReleasedRad: states.released.angle,
      armAngleAppliedRad: states.applied.angle,
      straightLineChangeMm: Math.hypot(appliedX, appliedY) - Math.hypot(releasedX, pinY),
    },
  };
}

type MarkedKind = Exclude<Mark['kind'], 'tie-point' | 'target-corner'>;
type Put = (at: P3, kind: MarkedKind, readingMm?: number) => void;

type TapeHold = ReturnType<typeof drawTapeHold>;

function drawTapeHold(draw: Draw, sharedScale: number) {
  const zero = draw.uniform(-1.6, 1.6);
  const side = draw.normal(-20, 12);
  const depth = draw.normal(-15, 10);
  const [alpha, beta] = [draw.normal(0, 0.06), draw.normal(0, 0.06)];
  return { zero, side, depth, alpha, beta, scale: 1 + sharedScale + draw.normal(0, 0.003) };
}

function putTape(hold: TapeHold, hand: 1 | -1, pinX: number, put: Put): void {
  const { zero, side, depth, alpha, beta, scale } = hold;
  for (let inch = 1; inch * 25.4 < pinX + 40; inch++) {
    const s = inch * 25.4 * scale;
    put(
      [
        zero + s * Math.cos(alpha) * Math.cos(beta),
        side + s * Math.sin(alpha) * Math.cos(beta),
        hand * (depth + s * Math.sin(beta)),
      ],
      'tape-graduation',
      inch * 25.4,
    );
  }
}

/** Ten points of the half of the rim that the camera sees. */
function putBand(draw: Draw, wheelEnd: WheelEnd, pose: CameraPose, put: Put): void {
  const radius = wheelEnd.bandMm / 2;
  const towards = Math.atan2(-pose.rows[2][2], -pose.rows[2][1]);
  for (let i = 0; i < 10; i++) {
    const angle = towards + ((i - 4.5) / 9) * 2.9 + draw.normal(0, 0.05);
    put([wheelEnd.bandX, radius * Math.cos(angle), radius * Math.sin(angle)], 'clamp-band');
  }
}

function putDistance(draw: Draw, hand: 1 | -1, put: Put): void {
  const begin: P3 = [draw.uniform(-20, 40), draw.uniform(-70, -30), hand * draw.normal(-10, 15)];
  const [angle, tilt] = [draw.normal(0, 0.3), draw.normal(0, 0.1)];
  const d = 150;
  put(begin, 'distance-end');
  put(
    [
      begin[0] + d * Math.cos(angle) * Math.cos(tilt),
      begin[1] + d * Math.sin(angle) * Math.cos(tilt),
      begin[2] + hand * d * Math.sin(tilt),
    ],
    'distance-end',
  );
}

function referencesOf(
  draw: Draw,
  { reference: kind, tapeUnmoved: unmoved = false }: SceneOptions,
  wheelEnd: WheelEnd,
): References {
  const arm = { lengthMm: wheelEnd.armMm + draw.normal(0, 0.8), uLengthMm: 0.8 };
  return {
    ...NO_REFERENCES,
    tape: kind.includes('tape') ? { zeroAtFace: true, unmoved, touchesPin: false } : null,
    clampBand: kind.includes('band')
      ? { diameterMm: wheelEnd.bandMm + draw.normal(0, 1), uDiameterMm: 1 }
      : null,
    armLength: kind.includes('arm') ? arm : null,
    distance: kind.includes('distance') ? { distanceMm: 150 + draw.normal(0, 0.3), uDistanceMm: 0.3 } : null,
  };
}

function captureOf(id: string, camera: Camera): Capture {
  return {
    id,
    kind: 'photo',
    fileName: `${id}.jpg`,
    mediaType: 'image/jpeg',
    sizeBytes: 1,
    sha256: '0'.repeat(64),
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    rotationDeg: 0,
    takenAt: null,
    focal35Mm: camera.focal35Mm,
    clip: null,
  };
}
