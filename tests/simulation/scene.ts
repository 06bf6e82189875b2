/**
 * Simulated wheel ends for tests and studies: the geometry is written here a second time, from the drawing and not from the
 * engine: exact arc of the pin, exact swivel of the stiff rod, pinhole camera with radial distortion.
 * Chamber frame in mm: x outwards along the chamber axis, y towards the camshaft, z = x cross y. Invented wheel ends.
 */

import { type Draw, drawFrom } from '../../src/basics/random.ts';
import type { CameraProfile } from '../../src/captures/camera-profile.ts';
import type { Capture } from '../../src/captures/capture.ts';
import type { BrakeState, View } from '../../src/marks/view.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import {
  drawDistanceEnds,
  drawTapeEdge,
  drawTapeHold,
  drawTargetCorners,
  readingsTo,
  type TapeEdge,
  type TapeHold,
  tapeEdgePoints,
  tapeGraduations,
} from './held.ts';
import { counter, marker, type Put } from './marker.ts';
import type { SceneOptions } from './scene-options.ts';
import { type Camera, type CameraPose, drawCamera, drawPose, imageOf, jittered, type P3 } from './sight.ts';
import { drawPrint, WARMTH } from './tape.ts';
import { drawWheelEnd, type WheelEnd } from './wheel-end.ts';

export type { ReferenceKind, SceneOptions } from './scene-options.ts';

export type Scene = {
  readonly input: MeasureInput;
  readonly truth: {
    readonly strokeMm: number;
    readonly armAngleReleasedRad: number;
    readonly armAngleAppliedRad: number;
    readonly straightLineChangeMm: number;
    /** Pin from the face along the axis, released. */
    readonly releasedReachMm: number;
  };
  /** Of the lens. */
  readonly k1: number;
  /** Where the camera stood, by view. */
  readonly poses: readonly CameraPose[];
};

export function simulate(options: SceneOptions): Scene {
  const draw = drawFrom(options.seed);
  // What was added later draws from a stream of its own: the rest of a scene stays as it was.
  const extra = drawFrom(options.seed + EXTRA_STREAM);
  const edgeDraw = drawFrom(options.seed + EDGE_STREAM);
  const drawnHand = draw.uniform(0, 1) < 0.5 ? 1 : -1;
  const hand = options.hand ?? drawnHand;
  const scatter = options.typical ? withoutScatter(draw) : draw;
  const extraScatter = options.typical ? withoutScatter(extra) : extra;
  const half = { uniform: draw.uniform, normal: scatter.normal };
  const wheelEnd = drawWheelEnd(half, hand, options);
  const camera = drawCamera(half, extraScatter, options);
  const states =
    options.freeStrokeMm === undefined
      ? (['released', 'applied'] as const)
      : (['released', 'applied', 'pulled'] as const);
  const firstPose = drawPose(draw, options, hand);
  const poses = states.map((_s, i) =>
    i === 0 || options.cameraStill ? firstPose : jittered(draw, firstPose),
  );
  const warmth = scatter.normal(0, WARMTH);
  const printScale = options.reference.includes('target') ? 1 + extraScatter.normal(0, 0.003) : 1;
  const ties = drawTies(extra, camera, poses, hand, options.tiePoints ?? 0);
  const tapeDraw = drawFrom(options.seed + TAPE_STREAM);
  const readings = (state: BrakeState) =>
    options.readingsMm ?? readingsTo(wheelEnd.states[state].pin[0], options.graduationStepMm ?? 25.4);
  const print = drawPrint(options.typical ? withoutScatter(tapeDraw) : tapeDraw, warmth, [
    readings('applied')[0] as number,
    readings('applied').at(-1) as number,
  ]);
  let tape: TapeHold | undefined;
  let edge: TapeEdge = drawTapeEdge(edgeDraw);
  let card: ReturnType<typeof drawTargetCorners> | undefined;
  const nextId = counter();
  const views = states.map((state, i): View => {
    const pose = poses[i] as CameraPose;
    const { marks, put, putMore, putEdge } = marker({
      draw,
      extra,
      edge: edgeDraw,
      camera,
      pose,
      options,
      nextId,
    });
    putPoints(wheelEnd, state, options, { put, putMore });
    if (options.reference.includes('tape')) {
      if (!tape || !options.tapeUnmoved) {
        tape = drawTapeHold({ draw: scatter, extra: extraScatter }, wheelEnd, state, options);
        edge = drawTapeEdge(edgeDraw);
      }
      const [pinX] = wheelEnd.states[state].pin;
      for (const { at, readingMm } of tapeGraduations(tape, hand, print, readings(state)))
        put(at, { kind: 'tape-graduation', readingMm });
      if (options.edgePoints)
        for (const at of tapeEdgePoints(edgeDraw, tape, edge, { hand, pinX, count: options.edgePoints }))
          putEdge(at, { kind: 'tape-edge' });
    }
    if (options.reference.includes('band')) putBand(draw, wheelEnd, pose, options.rimPoints ?? 10, put);
    if (options.reference.includes('distance'))
      for (const at of drawDistanceEnds(scatter, hand)) put(at, { kind: 'distance-end' });
    if (options.reference.includes('target')) {
      if (!card || !options.targetUnmoved)
        card = drawTargetCorners(extraScatter, wheelEnd, state, { ...options, printScale });
      for (const { at, marker, corner } of card) putMore(at, { kind: 'target-corner', marker, corner });
    }
    for (const [t, at] of ties.entries()) putMore(at, { kind: 'tie-point', tie: String(t + 1) });
    return { state, captureId: `c${i}`, frame: null, marks };
  });
  const captures = states.map((_s, i) => captureOf(`c${i}`, camera));
  const references = referencesOf(scatter, options, wheelEnd);
  const input: MeasureInput = {
    views,
    sideViews: [],
    captures,
    cameraStill: options.cameraStill ?? false,
    cameraProfile: options.profile ? profileOf(extraScatter, camera) : null,
    references: { ...references, ...addedReferences(extraScatter, options, wheelEnd, printScale) },
  };
  return { input, truth: wheelEnd.truth, poses, k1: camera.k1 };
}

const EXTRA_STREAM = 700_000_001;
const EDGE_STREAM = 800_000_001;
const TAPE_STREAM = 900_000_001;

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

/** Face, pin, camshaft and rod. */
function putPoints(
  wheelEnd: WheelEnd,
  state: BrakeState,
  options: SceneOptions,
  { put, putMore }: { readonly put: Put; readonly putMore: Put },
): void {
  const { hand } = wheelEnd;
  const s = wheelEnd.states[state];
  const outMm = options.faceMarkedMm?.[state] ?? 0;
  const slope = (s.pin[1] - s.rodYAtFace) / s.pin[0];
  const face: P3 = [outMm, s.rodYAtFace + outMm * slope, hand * wheelEnd.faceDepth];
  const pin: P3 = [s.pin[0], s.pin[1], hand * wheelEnd.pinDepth];
  put(face, { kind: 'chamber-face' });
  put(pin, { kind: 'clevis-pin' });
  for (let again = 1; again < (options.pinRepeats ?? 1); again++) {
    putMore(face, { kind: 'chamber-face' });
    putMore(pin, { kind: 'clevis-pin' });
  }
  if (options.camshaft !== false)
    put([...wheelEnd.camshaft, hand * wheelEnd.camshaftDepth], { kind: 'camshaft-end' });
  if (options.rodMarks)
    for (const share of [0.25, 0.6])
      put([s.pin[0] * share, s.rodYAtFace + (s.pin[1] - s.rodYAtFace) * share, 0], { kind: 'rod-line' });
}

/** Things that stand still near the brake and that every picture shows: those out of a picture are not taken. */
function drawTies(
  draw: Draw,
  camera: Camera,
  poses: readonly CameraPose[],
  hand: 1 | -1,
  count: number,
): readonly P3[] {
  const inSight = (at: P3) =>
    poses.every((pose) => {
      const [u, v] = imageOf(camera, pose, at);
      return u > 0 && u < camera.widthPx && v > 0 && v < camera.heightPx;
    });
  const ties: P3[] = [];
  for (let tried = 0; ties.length < count && tried < 100 * count; tried++) {
    const at: P3 = [draw.uniform(-80, 220), draw.uniform(-120, 220), hand * draw.uniform(-20, 120)];
    if (inSight(at)) ties.push(at);
  }
  return ties;
}

/** Points of the half of the rim that the camera sees. */
function putBand(draw: Draw, wheelEnd: WheelEnd, pose: CameraPose, count: number, put: Put): void {
  const radius = wheelEnd.bandMm / 2;
  const towards = Math.atan2(-pose.rows[2][2], -pose.rows[2][1]);
  for (let i = 0; i < count; i++) {
    const angle = towards + ((i - (count - 1) / 2) / (count - 1)) * 2.9 + draw.normal(0, 0.05);
    put([wheelEnd.bandX, radius * Math.cos(angle), radius * Math.sin(angle)], { kind: 'clamp-band' });
  }
}

function referencesOf(
  draw: Draw,
  { reference: kind, tapeUnmoved: unmoved = false, touchesPin = false, uBandMm = 1 }: SceneOptions,
  wheelEnd: WheelEnd,
): References {
  const arm = { lengthMm: wheelEnd.armMm + draw.normal(0, 0.8), uLengthMm: 0.8 };
  return {
    ...NO_REFERENCES,
    tape: kind.includes('tape') ? { zeroAtFace: true, unmoved, touchesPin } : null,
    clampBand: kind.includes('band')
      ? { diameterMm: wheelEnd.bandMm + draw.normal(0, uBandMm), uDiameterMm: uBandMm }
      : null,
    armLength: kind.includes('arm') ? arm : null,
    distance: kind.includes('distance') ? { distanceMm: 150 + draw.normal(0, 0.3), uDistanceMm: 0.3 } : null,
  };
}

/** What was added later: printed target, pin's end measured. */
function addedReferences(
  draw: Draw,
  { reference, targetUnmoved = false, touchesPin = false, pinEndKnown }: SceneOptions,
  wheelEnd: WheelEnd,
  printScale: number,
): Pick<References, 'target' | 'pinEnd'> {
  const [uCheckMm, uOutMm] = [0.3, 1.5];
  const target = () => ({
    checkMm: 100 * printScale + draw.normal(0, uCheckMm),
    uCheckMm,
    unmoved: targetUnmoved,
    touchesPin,
  });
  const pinEnd = () => ({ outMm: -wheelEnd.pinDepth + draw.normal(0, uOutMm), uOutMm });
  return {
    target: reference.includes('target') ? target() : null,
    pinEnd: pinEndKnown ? pinEnd() : null,
  };
}

/** A calibration's result, and what focusing nearer or farther than then makes of the focal length. */
function profileOf(draw: Draw, camera: Camera): CameraProfile {
  const { widthPx, heightPx, focalPx, centre, k1, k2 } = camera;
  const refocused = draw.normal(0, 0.004);
  return {
    id: 'profile',
    name: 'simulated',
    madeAt: '2025-01-01T00:00:00Z',
    widthPx,
    heightPx,
    focalPx: focalPx * Math.exp(refocused + draw.normal(0, 0.003)),
    uLnFocal: 0.003,
    cxPx: centre[0] + draw.normal(0, 3),
    cyPx: centre[1] + draw.normal(0, 3),
    uCxPx: 3,
    uCyPx: 3,
    k1: k1 + draw.normal(0, 0.003),
    uK1: 0.003,
    k2: k2 + draw.normal(0, 0.003),
    uK2: 0.003,
    rmsPx: 0.3,
    photoCount: 20,
    cornerCount: 800,
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
    fileWrittenAt: null,
    addedAt: null,
    focal35Mm: camera.focal35Mm,
    clip: null,
  };
}
