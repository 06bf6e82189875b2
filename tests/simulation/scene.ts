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
import type { References } from '../../src/references/reference.ts';

export type ReferenceKind = 'tape' | 'clamp-band' | 'arm-length' | 'distance' | 'tape+arm' | 'tape+band';

export type SceneOptions = {
  readonly seed: number;
  readonly reference: ReferenceKind;
  readonly sigmaPx: number;
  /** Greatest angle off square, each of yaw and pitch. */
  readonly offSquareDeg?: number;
  readonly distanceMm?: readonly [number, number];
  readonly cameraStill?: boolean;
  readonly camshaft?: boolean;
  readonly rodMarks?: boolean;
  readonly strokeMm?: number;
  readonly focalKnown?: boolean;
  readonly widthPx?: number;
  readonly heightPx?: number;
  /** Focal length over the longer side of the picture. */
  readonly focalOverWidth?: readonly [number, number];
  readonly anyRoll?: boolean;
  /** Lens distortion drawn with the engine's own prior width, or none. */
  readonly distortion?: boolean;
};

export type Scene = {
  readonly input: MeasureInput;
  readonly truth: {
    readonly strokeMm: number;
    readonly armAngleReleasedRad: number;
    readonly armAngleAppliedRad: number;
    readonly straightLineChangeMm: number;
  };
};

type P3 = readonly [number, number, number];

export function simulate(options: SceneOptions): Scene {
  const draw = drawFrom(options.seed);
  const hand = draw.uniform(0, 1) < 0.5 ? 1 : -1;
  const wheelEnd = drawWheelEnd(draw, hand, options);
  const camera = drawCamera(draw, options);
  const states = ['released', 'applied'] as const;
  const firstPose = drawPose(draw, options, hand);
  const secondPose = options.cameraStill ? firstPose : jittered(draw, firstPose);
  const tapeScale = draw.normal(0, 0.004);
  let nextId = 0;
  const views = states.map((state, i): View => {
    const pose = i === 0 ? firstPose : secondPose;
    const marks: Mark[] = [];
    const see = (at: P3): readonly [number, number] => imageOf(camera, pose, at);
    const put = (at: P3, kind: Mark['kind'], readingMm?: number): void => {
      const [u, v] = see(at);
      const placed = {
        id: `m${nextId++}`,
        xPx: u + draw.normal(0, options.sigmaPx),
        yPx: v + draw.normal(0, options.sigmaPx),
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
    if (options.reference.startsWith('tape')) putTape(draw, hand, tapeScale, s.pin[0], put);
    if (options.reference.endsWith('band')) putBand(draw, wheelEnd, pose, put);
    if (options.reference === 'distance') putDistance(draw, hand, put);
    return { state, captureId: `c${i}`, frame: null, marks };
  });
  const captures = states.map((_s, i) => captureOf(`c${i}`, camera));
  const input: MeasureInput = {
    views,
    captures,
    cameraStill: options.cameraStill ?? false,
    references: referencesOf(draw, options.reference, wheelEnd),
  };
  return { input, truth: wheelEnd.truth };
}

type WheelEnd = ReturnType<typeof drawWheelEnd>;

function drawWheelEnd(draw: Draw, hand: 1 | -1, options: SceneOptions) {
  const armMm = [127, 139.7, 152.4, 165.1][Math.floor(draw.uniform(0, 3.999))] as number;
  const bandMm = [161.93, 172.24, 183.36, 205.58][Math.floor(draw.uniform(0, 3.999))] as number;
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
  const appliedX = releasedX + strokeMm;
  const appliedY = camshaft[1] - Math.sqrt(armMm ** 2 - (appliedX - camshaft[0]) ** 2);
  const rodLength = Math.hypot(releasedX + innerMm, pinY);
  const stateOf = (x: number, y: number) => {
    const innerX = x - Math.sqrt(rodLength ** 2 - y ** 2);
    const rodYAtFace = (y * -innerX) / (x - innerX);
    const rod = [innerX - x, -y] as const;
    const arm = [camshaft[0] - x, camshaft[1] - y] as const;
    const angle = Math.acos((rod[0] * arm[0] + rod[1] * arm[1]) / (Math.hypot(...rod) * Math.hypot(...arm)));
    return { pin: [x, y] as const, rodYAtFace, angle };
  };
  const states = { released: stateOf(releasedX, pinY), applied: stateOf(appliedX, appliedY) };
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

type Camera = ReturnType<typeof drawCamera>;

function drawCamera(draw: Draw, options: SceneOptions) {
  const widthPx = options.widthPx ?? 1920;
  const heightPx = options.heightPx ?? 1080;
  const longer = Math.max(widthPx, heightPx);
  const [low, high] = options.focalOverWidth ?? [0.7, 0.85];
  const focalPx = longer * draw.uniform(low, high);
  const diagonal = Math.hypot(widthPx, heightPx);
  const statedFocal35 = (focalPx / diagonal) * Math.hypot(36, 24) * Math.exp(draw.normal(0, 0.03));
  return {
    widthPx,
    heightPx,
    focalPx,
    focal35Mm: options.focalKnown === false ? null : statedFocal35,
    centre: [
      widthPx / 2 + draw.normal(0, 0.01 * longer),
      heightPx / 2 + draw.normal(0, 0.01 * longer),
    ] as const,
    k1: options.distortion === false ? 0 : draw.normal(0, 0.02),
  };
}

type CameraPose = { readonly rows: readonly [P3, P3, P3]; readonly t: P3 };

function drawPose(draw: Draw, options: SceneOptions, hand: 1 | -1): CameraPose {
  const off = ((options.offSquareDeg ?? 25) * Math.PI) / 180;
  const yaw = draw.uniform(-off, off);
  const pitch = draw.uniform(-off, off);
  const roll = options.anyRoll ? draw.uniform(-Math.PI, Math.PI) : draw.normal(0, 0.2);
  const [near, far] = options.distanceMm ?? [500, 1000];
  const distance = draw.uniform(near, far);
  const base: readonly [P3, P3, P3] = [
    [1, 0, 0],
    [0, hand, 0],
    [0, 0, hand],
  ];
  const rows = times(aboutZ(roll), times(aboutY(yaw), times(aboutX(pitch), base)));
  // The camera looks at a point near the middle of rod and arm.
  const target: P3 = [draw.uniform(40, 130), draw.uniform(0, 70), 0];
  const [tx, ty, tz] = apply(rows, target);
  return {
    rows,
    t: [draw.normal(0, 0.03) * distance - tx, draw.normal(0, 0.03) * distance - ty, distance - tz],
  };
}

function jittered(draw: Draw, pose: CameraPose): CameraPose {
  const small = times(
    aboutZ(draw.normal(0, 0.05)),
    times(aboutY(draw.normal(0, 0.06)), aboutX(draw.normal(0, 0.06))),
  );
  const t = apply(small, pose.t);
  const d = t[2];
  return {
    rows: times(small, pose.rows),
    t: [
      t[0] * 0.3 + draw.normal(0, 0.03) * d,
      t[1] * 0.3 + draw.normal(0, 0.03) * d,
      d * (1 + draw.normal(0, 0.06)),
    ],
  };
}

function imageOf(camera: Camera, pose: CameraPose, at: P3): readonly [number, number] {
  const p = apply(pose.rows, at);
  const z = p[2] + pose.t[2];
  const [a, b] = [(p[0] + pose.t[0]) / z, (p[1] + pose.t[1]) / z];
  const d = 1 + camera.k1 * (a * a + b * b);
  return [camera.centre[0] + camera.focalPx * d * a, camera.centre[1] + camera.focalPx * d * b];
}

type Put = (at: P3, kind: Mark['kind'], readingMm?: number) => void;

function putTape(draw: Draw, hand: 1 | -1, sharedScale: number, pinX: number, put: Put): void {
  const zero = draw.uniform(-1.6, 1.6);
  const side = draw.normal(-20, 12);
  const depth = draw.normal(-15, 10);
  const [alpha, beta] = [draw.normal(0, 0.06), draw.normal(0, 0.06)];
  const scale = 1 + sharedScale + draw.normal(0, 0.003);
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

function referencesOf(draw: Draw, kind: ReferenceKind, wheelEnd: WheelEnd): References {
  const arm = { lengthMm: wheelEnd.armMm + draw.normal(0, 0.8), uLengthMm: 0.8 };
  return {
    tape: kind.startsWith('tape') ? { zeroAtFace: true, unmoved: false } : null,
    clampBand: kind.endsWith('band')
      ? { diameterMm: wheelEnd.bandMm + draw.normal(0, 1), uDiameterMm: 1 }
      : null,
    armLength: kind === 'arm-length' || kind === 'tape+arm' ? arm : null,
    distance: kind === 'distance' ? { distanceMm: 150 + draw.normal(0, 0.3), uDistanceMm: 0.3 } : null,
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

type Rows = readonly [P3, P3, P3];

function apply(m: Rows, p: P3): P3 {
  const row = (r: P3) => r[0] * p[0] + r[1] * p[1] + r[2] * p[2];
  return [row(m[0]), row(m[1]), row(m[2])];
}

function times(a: Rows, b: Rows): Rows {
  const column = (j: 0 | 1 | 2): P3 => apply(a, [b[0][j], b[1][j], b[2][j]]);
  const [c0, c1, c2] = [column(0), column(1), column(2)];
  return [
    [c0[0], c1[0], c2[0]],
    [c0[1], c1[1], c2[1]],
    [c0[2], c1[2], c2[2]],
  ];
}

function aboutX(r: number): Rows {
  return [
    [1, 0, 0],
    [0, Math.cos(r), -Math.sin(r)],
    [0, Math.sin(r), Math.cos(r)],
  ];
}

function aboutY(r: number): Rows {
  return [
    [Math.cos(r), 0, Math.sin(r)],
    [0, 1, 0],
    [-Math.sin(r), 0, Math.cos(r)],
  ];
}

function aboutZ(r: number): Rows {
  return [
    [Math.cos(r), -Math.sin(r), 0],
    [Math.sin(r), Math.cos(r), 0],
    [0, 0, 1],
  ];
}
