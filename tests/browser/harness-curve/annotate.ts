/** Writes an annotated clip of the chosen file and opens what came of it again, for the spec to compare. */
import { annotatedClip } from '../../../src/app/curve/annotated-clip.browser.ts';
import { openCapture } from '../../../src/captures/open-capture.browser.ts';
import { isAbort } from '../../../src/captures/time-limit.browser.ts';
import { openFrames } from '../../../src/frames/open-frames.browser.ts';
import type { Track, TrackPoint } from '../../../src/marks/track.ts';
import type { ClipMeasurement } from '../../../src/measurement/clip-measurement.ts';
import type { StrokeDrawing } from '../../../src/measurement/measurement.ts';

type Point = readonly [x: number, y: number];

const forever = new AbortController().signal;

export type Opened = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly timesS: readonly number[];
  /** Of each frame, at each place asked for. */
  readonly rgb: readonly (readonly (readonly number[])[])[];
};

export type Annotated =
  | {
      readonly fileName: string;
      readonly progress: readonly number[];
      readonly original: Opened;
      readonly written: Opened;
    }
  | { readonly code: string }
  | 'ended';

/** The pin goes 2 px a frame to the right from PIN_FROM, is hidden in frame 5; four things stand still. */
export const PIN_FROM: Point = [60, 120];
const STILL: readonly Point[] = [
  [20, 70],
  [300, 70],
  [20, 170],
  [300, 160],
];
const HIDDEN = 5;

export async function annotate(
  file: File,
  points: readonly Point[],
  abortAfter: number | null,
): Promise<Annotated> {
  const taken = await openCapture(file, { id: 'c1', signal: forever });
  if (!taken.ok) return { code: taken.failure.code };
  const { capture } = taken.value;
  const original = await opened(file, points);
  const { track, measurement } = plainClip(original, capture.clip?.ticksPerSecond ?? 1);
  const control = new AbortController();
  const progress: number[] = [];
  try {
    const result = await annotatedClip({
      capture,
      blob: file,
      annotation: { track, measurement, unit: 'mm' },
      signal: control.signal,
      onProgress: (written) => {
        progress.push(written);
        if (written === abortAfter) control.abort();
      },
    });
    if (!result.ok) return { code: result.failure.code };
    const { blob, fileName } = result.value;
    return { fileName, progress, original, written: await opened(new File([blob], fileName), points) };
  } catch (reason) {
    if (isAbort(reason)) return 'ended';
    throw reason;
  }
}

async function opened(file: File, points: readonly Point[]): Promise<Opened> {
  const taken = await openCapture(file, { id: 'c1', signal: forever });
  if (!taken.ok) throw new Error(taken.failure.code);
  const { capture } = taken.value;
  const source = await openFrames(capture, file);
  if (!source.ok) throw new Error(source.failure.code);
  const context = new OffscreenCanvas(capture.widthPx, capture.heightPx).getContext('2d', {
    willReadFrequently: true,
  });
  if (!context) throw new Error('No canvas');
  const rgb: number[][][] = [];
  for (const frame of source.value.frames) {
    const picture = await source.value.picture(frame, forever);
    if (!picture.ok) throw new Error(picture.failure.code);
    context.drawImage(picture.value, 0, 0);
    picture.value.close();
    rgb.push(points.map(([x, y]) => [...context.getImageData(x, y, 1, 1).data.subarray(0, 3)]));
  }
  const timesS = source.value.frames.map(({ timeTicks }) => timeTicks / (capture.clip?.ticksPerSecond ?? 1));
  source.value.close();
  return { widthPx: capture.widthPx, heightPx: capture.heightPx, timesS, rgb };
}

function plainClip({ timesS }: Opened, ticksPerSecond: number) {
  const pinAt = (i: number): Point => [PIN_FROM[0] + 2 * i, PIN_FROM[1]];
  const column = (kind: TrackPoint['kind'], markId: string, at: (i: number) => Point | null): TrackPoint => {
    const places = timesS.map((_, i) => at(i));
    return {
      kind,
      markId,
      xCentiPx: places.map((place) => place && place[0] * 100),
      yCentiPx: places.map((place) => place && place[1] * 100),
      sigmaMilliPx: places.map((place) => place && 100),
    };
  };
  const timeTicks = timesS.map((s) => Math.round(s * ticksPerSecond));
  const track: Track = {
    id: 't1',
    captureId: 'c1',
    state: 'released',
    seed: { index: 0, timeTicks: timeTicks[0] ?? 0 },
    corrections: [],
    firstIndex: 0,
    timeTicks,
    points: [
      column('clevis-pin', 'pin', (i) => (i === HIDDEN ? null : pinAt(i))),
      ...STILL.map((place, n) => column('still', `still ${n}`, () => place)),
    ],
  };
  const [x, y] = PIN_FROM;
  const extension = (atX: number): readonly [Point, Point] => [
    [atX, y + 8],
    [atX, y + 36],
  ];
  const drawingAt = (i: number): StrokeDrawing => ({
    state: 'released',
    axis: [
      [20, y],
      [240, y],
    ],
    extensions: [extension(x), extension(pinAt(i)[0])],
    dimension: [
      [x, y + 30],
      [pinAt(i)[0], y + 30],
    ],
  });
  const measurement: ClipMeasurement = {
    curve: timesS.map((timeS, i) => ({
      timeS,
      stroke: i === HIDDEN ? null : { value: i, u: 0.1 },
      armAngleRad: null,
    })),
    drawings: timesS.map((_, i) => (i === HIDDEN ? null : drawingAt(i))),
    applications: [],
    pictured: 0,
    longer: null,
    spreadMm: null,
    square: null,
    stillScatter: 1,
    marked: [],
    gaps: [],
    warnings: [],
  };
  return { track, measurement };
}
