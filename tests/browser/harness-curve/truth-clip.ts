/** The sample clip as if it had been followed without a fault: its points from the truth beside it, noise with a seed. */
import { drawFrom } from '../../../src/basics/random.ts';
import type { Track, TrackPoint } from '../../../src/marks/track.ts';
import type { ClipMeasurement } from '../../../src/measurement/clip-measurement.ts';
import type { PicturePoint, StrokeDrawing } from '../../../src/measurement/measurement.ts';

type Vec3 = readonly [number, number, number];
type Pose = readonly (readonly [number, number, number, number])[];

export type Truth = {
  readonly strokeMm: number;
  readonly chamberFrame: {
    readonly pinReleasedMm: Vec3;
    readonly pinAppliedMm: Vec3;
    readonly camshaftMm: Vec3;
  };
  readonly views: readonly {
    readonly frameIndex: number;
    readonly focalPx: number;
    readonly principalPx: readonly [number, number];
  }[];
  readonly frames: readonly {
    readonly timeS: number;
    readonly strokeMm: number;
    readonly cameraFromChamber: Pose;
    readonly points: Readonly<Record<'chamberFace' | 'clevisPin' | 'camshaftEnd', readonly [number, number]>>;
  }[];
};

const PIN_END_Z_MM = -25;
const STILL_COUNT = 30;
const HIDDEN = { from: 66, to: 74 };

export function truthClip(truth: Truth, ticksPerSecond: number) {
  const draw = drawFrom(3);
  const { frames, chamberFrame } = truth;
  const view = truth.views[0];
  if (!view) throw new Error('No view');
  const seen = (pose: Pose, [x, y, z]: Vec3): PicturePoint => {
    const [a = 0, b = 0, c = 1] = pose.map((row) => row[0] * x + row[1] * y + row[2] * z + row[3]);
    return [view.principalPx[0] + (view.focalPx * a) / c, view.principalPx[1] + (view.focalPx * b) / c];
  };
  const column = (
    kind: TrackPoint['kind'],
    markId: string,
    places: readonly (PicturePoint | null)[],
  ): TrackPoint => ({
    kind,
    markId,
    xCentiPx: places.map((at) => at && Math.round(100 * at[0])),
    yCentiPx: places.map((at) => at && Math.round(100 * at[1])),
    sigmaMilliPx: places.map((at) => at && 120),
  });
  const stills = Array.from({ length: STILL_COUNT }, (_, n): TrackPoint => {
    const point: Vec3 = [draw.uniform(-120, 60), draw.uniform(-110, 190), draw.uniform(-60, 60)];
    const places = frames.map(({ cameraFromChamber }): PicturePoint => {
      const [x, y] = seen(cameraFromChamber, point);
      return [x + draw.normal(0, 0.1), y + draw.normal(0, 0.1)];
    });
    return column('still', `still ${n}`, places);
  });
  const hidden = (i: number) => HIDDEN.from <= i && i <= HIDDEN.to;
  const track: Track = {
    id: 't1',
    captureId: 'c1',
    state: 'released',
    seed: { index: view.frameIndex, timeTicks: Math.round((view.frameIndex * ticksPerSecond) / 30) },
    corrections: [],
    firstIndex: 0,
    timeTicks: frames.map(({ timeS }) => Math.round(timeS * ticksPerSecond)),
    points: [
      column(
        'chamber-face',
        'face',
        frames.map(({ points }) => points.chamberFace),
      ),
      column(
        'clevis-pin',
        'pin',
        frames.map(({ points }, i) => (hidden(i) ? null : points.clevisPin)),
      ),
      column(
        'camshaft-end',
        'shaft',
        frames.map(({ points }) => points.camshaftEnd),
      ),
      ...stills,
    ],
  };
  const [r, a] = [chamberFrame.pinReleasedMm, chamberFrame.pinAppliedMm];
  const drawingIn = ({ cameraFromChamber, strokeMm }: Truth['frames'][number]): StrokeDrawing => {
    const at = (x: number, y: number) => seen(cameraFromChamber, [x, y, PIN_END_Z_MM]);
    const pinY = r[1] + ((a[1] - r[1]) * strokeMm) / truth.strokeMm;
    const extension = (x: number, y: number) => [at(x, y - 9), at(x, -68)] as const;
    return {
      state: 'released',
      axis: [at(0, 0), at(a[0] + 25, 0)],
      extensions: [extension(r[0], r[1]), extension(r[0] + strokeMm, pinY)],
      dimension: [at(r[0], -62), at(r[0] + strokeMm, -62)],
    };
  };
  const drawings = frames.map((frame, i) => (hidden(i) ? null : drawingIn(frame)));
  return { track, measurement: measurementOf(truth, hidden, draw.normal, drawings) };
}

function measurementOf(
  { frames, strokeMm }: Truth,
  hidden: (i: number) => boolean,
  normal: (mean: number, sigma: number) => number,
  drawings: ClipMeasurement['drawings'],
): ClipMeasurement {
  const moving = frames.flatMap((frame, i) =>
    frame.strokeMm > 0.5 && frame.strokeMm < strokeMm - 0.5 ? [i] : [],
  );
  const rise = moving.filter((i) => (frames[i + 1]?.strokeMm ?? 0) > (frames[i]?.strokeMm ?? 0));
  const ninety = frames.findIndex((frame) => frame.strokeMm >= 0.9 * strokeMm);
  const fall = moving.filter((i) => !rise.includes(i));
  const [up, full] = [Math.min(...rise) - 1, Math.max(...rise) + 1];
  const down = fall.length > 0 ? Math.min(...fall) - 1 : frames.length - 1;
  return {
    curve: frames.map((frame, i) => ({
      timeS: frame.timeS,
      stroke: hidden(i) ? null : { value: frame.strokeMm + normal(0, 0.12), u: 0.12 },
      armAngleRad: hidden(i) ? null : { value: 1.934 - (frame.strokeMm / strokeMm) * 0.454, u: 0.004 },
    })),
    drawings,
    applications: [
      {
        phases: [
          { kind: 'released', from: 0, to: up },
          { kind: 'applying', from: up, to: full },
          { kind: 'held', from: full, to: down },
        ],
        strokeMm: { value: strokeMm, u: 0.35, U95: 0.69, budget: [{ group: 'marks', u: 0.35 }] },
        toNinetyPercentS: { value: (ninety - up) / 30, u: 0.01 },
        toFullS: { value: (full - up) / 30, u: 0.02 },
        releaseS: null,
        creepMmPerS: { value: 0.1, u: 0.06 },
      },
    ],
    pictured: 0,
    longer: null,
    spreadMm: null,
    square: null,
    stillScatter: 1,
    marked: [],
    gaps: [{ kind: 'clevis-pin', ...HIDDEN }],
    warnings: [],
  };
}
