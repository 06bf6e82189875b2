/**
 * Simulated tracks with truth: a hand-held clip of a brake that is applied, as a follower would see it. Wheel end, camera, tape and hand
 * as in scene.ts, not from the engine. What is followed is the spot that the hand marked, carried by its part: the pin's with the pin,
 * the face's, the camshaft end's, graduations' and stills' in place. Noise of a place: part of it anew in every frame, part of it
 * alike for about half a second, and one draw for every spell of held brake (other light).
 */
import { type Draw, drawFrom } from '../../src/basics/random.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { Track, TrackPoint } from '../../src/marks/track.ts';
import type { View } from '../../src/marks/view.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { NO_REFERENCES } from '../../src/references/reference.ts';
import { type Camera, type CameraPose, type P3, seenInPlane } from './clip-camera.ts';
import { type Course, type Hand, handPath, type Travel, travelOf } from './clip-path.ts';
import { drawTapeHold, readingsTo, tapeGraduations } from './held.ts';
import type { SceneOptions } from './scene-options.ts';
import { drawCamera, drawPose, imageOf } from './sight.ts';
import { drawPrint, WARMTH } from './tape.ts';
import { drawWheelEnd } from './wheel-end.ts';

export type ClipOptions = {
  readonly seed: number;
  readonly reference: 'tape' | 'clamp-band';
  readonly handSigmaPx: number;
  /** Of a followed place in one frame. */
  readonly noisePx: number;
  /** Share of the noise (of its variance) that stays alike from frame to frame. */
  readonly alike: number;
  /** One draw for every spell of held brake, of every followed place. */
  readonly lightPx: number;
  readonly framesPerS: number;
  /** Frames come at uneven times: each interval from 0.7 to 1.3 of the mean. */
  readonly uneven: boolean;
  readonly course: Course;
  readonly hand: Hand;
  readonly seedState: 'released' | 'applied';
  readonly tapeUnmoved: boolean;
  readonly distanceMm: readonly [number, number];
  readonly offSquareDeg: number;
  /** Spells in which the pin is not seen, seconds. */
  readonly hidden: readonly (readonly [number, number])[];
  /** Frames at random in which nothing of a thing is seen, share. */
  readonly lost: number;
  readonly stills: number;
  readonly camshaft: boolean;
  /** Beside a tape: of the clamp band's rim as an assist finds it, diameter not known; null: none is found. */
  readonly rimSigmaPx: number | null;
};

export type ClipScene = {
  readonly input: MeasureInput;
  readonly track: Track;
  readonly truth: {
    readonly travel: Travel;
    readonly times: readonly number[];
    readonly travelMm: readonly number[];
    readonly armAngleRad: readonly number[];
    readonly seedFrame: number;
    /** Centre of the pin's visible end in each frame. */
    readonly pinMm: readonly P3[];
    /** Where a place of the chamber frame lies in a frame, px. */
    readonly seen: (frame: number, at: P3) => readonly [number, number];
  };
};

const TICKS_PER_S = 90_000;
const TAPE_STREAM = 900_000_001;
const ANY_BAND = { diameterMm: 185, uDiameterMm: 30 };
const ALIKE_S = 0.5;

export function simulateClip(options: ClipOptions): ClipScene {
  const draw = drawFrom(options.seed);
  const hand = draw.uniform(0, 1) < 0.5 ? 1 : -1;
  const longest = Math.max(...options.course.strokesMm);
  const scene: SceneOptions = {
    seed: options.seed,
    reference: options.reference,
    sigmaPx: options.handSigmaPx,
    distanceMm: options.distanceMm,
    offSquareDeg: options.offSquareDeg,
    strokeMm: longest,
    tapeUnmoved: options.tapeUnmoved,
  };
  const mechanism = Math.floor(draw.uniform(1, 1e9));
  const wheelAt = (travelMm: number) =>
    drawWheelEnd(drawFrom(mechanism), hand, { ...scene, freeStrokeMm: travelMm });
  const wheelEnd = wheelAt(0);
  const camera = drawCamera(draw, draw, scene);
  const travel = travelOf(options.course);
  const times = frameTimes(draw, options, travel.lastingS);
  const count = times.length;
  const poses = handPath(draw, drawPose(draw, scene, hand), times, options.hand);
  const travelMm = times.map(travel.travelMm);
  const states = travelMm.map((mm) => wheelAt(mm).states.pulled);
  const seedFrame = frameAtRest(draw, options, travel, times);
  const [seedPose, seedState] = [
    poses[seedFrame] as CameraPose,
    states[seedFrame] as (typeof states)[number],
  ];

  const marks: Mark[] = [];
  const spots: { mark: Mark; at: P3 }[] = [];
  const put = (at: P3, sort: object, sigmaPx: number) => {
    const [u, v] = imageOf(camera, seedPose, at);
    const [xPx, yPx] = [u + draw.normal(0, sigmaPx), v + draw.normal(0, sigmaPx)];
    const mark = { id: `m${marks.length}`, xPx, yPx, sigmaPx, placedBy: 'hand', ...sort } as Mark;
    marks.push(mark);
    spots.push({ mark, at: seenInPlane(camera, seedPose, [xPx, yPx], at) });
  };
  const { pin } = seedState;
  const s = options.handSigmaPx;
  put([0, seedState.rodYAtFace, hand * wheelEnd.faceDepth], { kind: 'chamber-face' }, s);
  put([pin[0], pin[1], hand * wheelEnd.pinDepth], { kind: 'clevis-pin' }, s);
  if (options.camshaft)
    put([...wheelEnd.camshaft, hand * wheelEnd.camshaftDepth], { kind: 'camshaft-end' }, s);
  if (options.reference === 'tape') {
    const warmth = draw.normal(0, WARMTH);
    const hold = drawTapeHold({ draw, extra: draw }, wheelEnd, 'released', scene);
    const readings = readingsTo(pin[0], 25.4).slice(0, 8);
    const span = [readings[0] as number, readings.at(-1) as number] as const;
    const print = drawPrint(drawFrom(options.seed + TAPE_STREAM), warmth, span);
    for (const { at, readingMm } of tapeGraduations(hold, hand, print, readings))
      put(at, { kind: 'tape-graduation', readingMm }, s);
  }
  const rimSigmaPx = options.reference === 'tape' ? options.rimSigmaPx : s;
  if (rimSigmaPx !== null) {
    const radius = wheelEnd.bandMm / 2;
    const towards = Math.atan2(-seedPose.rows[2][2], -seedPose.rows[2][1]);
    for (let i = 0; i < 10; i++) {
      const angle = towards + ((i - 4.5) / 9) * 2.9 + draw.normal(0, 0.05);
      const at: P3 = [wheelEnd.bandX, radius * Math.cos(angle), radius * Math.sin(angle)];
      put(at, { kind: 'clamp-band' }, rimSigmaPx);
    }
  }
  const bandMm = wheelEnd.bandMm + draw.normal(0, 1);

  const noise = followNoise(draw, options, travel, times);
  const isHidden = (t: number) => options.hidden.some(([from, to]) => t >= from && t < to);
  const points: TrackPoint[] = [];
  const follow = (kind: TrackPoint['kind'], markId: string, at: (frame: number) => P3) => {
    const off = noise();
    const columns = { x: [] as (number | null)[], y: [] as (number | null)[], s: [] as (number | null)[] };
    for (const [frame, t] of times.entries()) {
      const isSeed = frame === seedFrame;
      const [u, v] = imageOf(camera, poses[frame] as CameraPose, at(frame));
      const outside = !(u > 10 && u < camera.widthPx - 10 && v > 10 && v < camera.heightPx - 10);
      const gone =
        !isSeed && (outside || (kind === 'clevis-pin' && isHidden(t)) || draw.uniform(0, 1) < options.lost);
      const [dx, dy] = isSeed ? [0, 0] : (off[frame] as readonly [number, number]);
      columns.x.push(gone ? null : Math.round(100 * (u + dx)));
      columns.y.push(gone ? null : Math.round(100 * (v + dy)));
      columns.s.push(gone ? null : Math.max(1, Math.round(1000 * (isSeed ? 0.02 : options.noisePx))));
    }
    points.push({ kind, markId, xCentiPx: columns.x, yCentiPx: columns.y, sigmaMilliPx: columns.s });
  };
  for (const { mark, at } of spots) {
    if (mark.kind === 'clamp-band') continue;
    if (mark.kind === 'tape-graduation' && !options.tapeUnmoved) continue;
    const moved = (frame: number): P3 => {
      const now = (states[frame] as (typeof states)[number]).pin;
      return [at[0] + now[0] - pin[0], at[1] + now[1] - pin[1], at[2]];
    };
    follow(mark.kind as TrackPoint['kind'], mark.id, mark.kind === 'clevis-pin' ? moved : () => at);
  }
  for (const [i, at] of drawStills(draw, camera, seedPose, hand, options.stills).entries())
    follow('still', `s${i}`, () => at);

  const ticks = times.map((t) => Math.round(t * TICKS_PER_S));
  const frame = { index: seedFrame, timeTicks: ticks[seedFrame] as number };
  const view: View = { state: options.seedState, captureId: 'clip', frame, marks };
  return {
    input: {
      views: [view],
      sideViews: [],
      captures: [captureOf(camera, count, travel.lastingS)],
      cameraStill: false,
      cameraProfile: null,
      references: {
        ...NO_REFERENCES,
        tape:
          options.reference === 'tape'
            ? { zeroAtFace: true, unmoved: options.tapeUnmoved, touchesPin: false }
            : null,
        clampBand:
          options.reference === 'clamp-band'
            ? { diameterMm: bandMm, uDiameterMm: 1 }
            : rimSigmaPx === null
              ? null
              : ANY_BAND,
      },
    },
    track: {
      id: 'track',
      captureId: 'clip',
      state: options.seedState,
      seed: frame,
      corrections: [],
      firstIndex: 0,
      timeTicks: ticks,
      points,
    },
    truth: {
      travel,
      times,
      travelMm,
      armAngleRad: states.map(({ angle }) => angle),
      seedFrame,
      pinMm: states.map(({ pin: [x, y] }) => [x, y, hand * wheelEnd.pinDepth]),
      seen: (at, point) => imageOf(camera, poses[at] as CameraPose, point),
    },
  };
}

function frameTimes(draw: Draw, { framesPerS, uneven }: ClipOptions, lastingS: number): readonly number[] {
  const times: number[] = [];
  for (let t = 0; t < lastingS; t += (uneven ? draw.uniform(0.7, 1.3) : 1) / framesPerS) times.push(t);
  return times;
}

/** Somebody pauses the clip where the brake is at rest, in the middle half of that spell. */
function frameAtRest(
  draw: Draw,
  { seedState, course }: ClipOptions,
  travel: Travel,
  times: readonly number[],
): number {
  const fits = times.flatMap((t, i) => {
    const held = travel.heldMm(t);
    if (seedState === 'applied') return held === null ? [] : [i];
    const first = travel.applications[0]?.begin ?? 0;
    const last = travel.applications.at(-1);
    const after = course.begins === 'applied' && last ? t > last.letGo + 3 * course.releaseS : t < first;
    return after ? [i] : [];
  });
  return fits[Math.floor(draw.uniform(0.25, 0.75) * fits.length)] ?? 0;
}

/** For each thing that is followed, the noise of its place in every frame. */
function followNoise(
  draw: Draw,
  { noisePx, alike, lightPx }: ClipOptions,
  travel: Travel,
  times: readonly number[],
) {
  const spell = (t: number) =>
    travel.applications.filter(({ begin }) => t >= begin).length * 2 - (travel.heldMm(t) === null ? 0 : 1);
  return (): readonly (readonly [number, number])[] => {
    const lights = new Map<number, readonly [number, number]>();
    let slow = [draw.normal(0, noisePx), draw.normal(0, noisePx)] as const;
    return times.map((t, i) => {
      const keep = i === 0 ? 1 : Math.exp(-(t - (times[i - 1] as number)) / ALIKE_S);
      const next = (value: number) => keep * value + Math.sqrt(1 - keep * keep) * draw.normal(0, noisePx);
      slow = [next(slow[0]), next(slow[1])];
      const light = lights.get(spell(t)) ?? [draw.normal(0, lightPx), draw.normal(0, lightPx)];
      lights.set(spell(t), light);
      const [a, b] = [Math.sqrt(alike), Math.sqrt(1 - alike)];
      return [
        a * slow[0] + b * draw.normal(0, noisePx) + light[0],
        a * slow[1] + b * draw.normal(0, noisePx) + light[1],
      ] as const;
    });
  };
}

function drawStills(
  draw: Draw,
  camera: Camera,
  pose: CameraPose,
  hand: 1 | -1,
  count: number,
): readonly P3[] {
  const stills: P3[] = [];
  for (let tried = 0; stills.length < count && tried < 100 * count; tried++) {
    const at: P3 = [draw.uniform(-90, 240), draw.uniform(-140, 220), hand * draw.uniform(-30, 130)];
    const [u, v] = imageOf(camera, pose, at);
    if (u > 60 && u < camera.widthPx - 60 && v > 60 && v < camera.heightPx - 60) stills.push(at);
  }
  return stills;
}

function captureOf(camera: Camera, frameCount: number, durationS: number) {
  return {
    id: 'clip',
    kind: 'clip' as const,
    fileName: 'clip.mp4',
    mediaType: 'video/mp4',
    sizeBytes: 1,
    sha256: '0'.repeat(64),
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    rotationDeg: 0 as const,
    takenAt: null,
    fileWrittenAt: null,
    addedAt: null,
    focal35Mm: camera.focal35Mm,
    clip: {
      ticksPerSecond: TICKS_PER_S,
      frameCount,
      durationS,
      codec: 'avc1',
      headerTime: null,
      framesBy: null,
    },
  };
}
