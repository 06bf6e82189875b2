/** From a track to the stroke as the page makes it: views, adjustment, curve; and how that stands to the truth. */
import { ok, type Result } from '../../src/basics/result.ts';
import type { Capture } from '../../src/captures/capture.ts';
import type { Track } from '../../src/marks/track.ts';
import type { ClipFailure } from '../../src/measurement/clip-measurement.ts';
import { clipViews } from '../../src/measurement/clip-views.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput, MeasurementFailure } from '../../src/measurement/measurement.ts';
import { strokeOverTime } from '../../src/measurement/stroke-over-time.ts';
import type { References } from '../../src/references/reference.ts';
import { type StudyClip, seedView, TAPE_UNMOVED } from './tracking-clip.ts';
import { rms } from './tracking-score.ts';

export type StrokeOutcome =
  | {
      /** Of the two views, as on the sheet. */
      readonly strokeMm: number;
      readonly U95Mm: number;
      readonly trueMm: number;
      readonly inflation: number;
      /** Each application's own, in the order of time, less the true one; null where there is no true one. */
      readonly applicationErrorsMm: readonly (number | null)[];
      readonly applicationU95Mm: readonly number[];
      /** Of the curve: rms of value less truth over all frames that have one, mm. */
      readonly curveRmsMm: number;
      readonly stillScatter: number;
      readonly warnings: readonly string[];
      readonly ms: number;
    }
  | { readonly code: string; readonly ms: number };

export function strokeOf(
  clip: StudyClip,
  track: Track,
  ticksPerSecond: number,
  references: References = TAPE_UNMOVED,
): StrokeOutcome {
  const begun = performance.now();
  const ms = () => performance.now() - begun;
  const made = clipInput(clip, track, ticksPerSecond, references);
  if (!made.ok) return { code: made.failure.code, ms: ms() };
  const input = made.value;
  const measured = measure(input);
  if (!measured.ok) return { code: measured.failure.code, ms: ms() };
  const over = strokeOverTime(input, track);
  if (!over.ok) return { code: over.failure.code, ms: ms() };
  const { strokeMm, warnings, fit } = measured.value;
  const { curve, applications, stillScatter } = over.value;
  const truths = clip.truth.applications?.map((each) => each.strokeMm) ?? [clip.truth.strokeMm];
  const base = clip.truth.frames[clip.seedIndex]?.strokeMm ?? 0;
  const off = curve.flatMap(({ stroke }, i) => {
    const frame = clip.truth.frames[track.firstIndex + i];
    return stroke && frame ? [stroke.value - (frame.strokeMm - base)] : [];
  });
  return {
    strokeMm: strokeMm.value,
    U95Mm: strokeMm.U95,
    trueMm: trueStroke(clip),
    inflation: fit.inflation,
    applicationErrorsMm: applications.map((each, i) => {
      const known = truths[i];
      return known === undefined ? null : each.strokeMm.value - known;
    }),
    applicationU95Mm: applications.map((each) => each.strokeMm.U95),
    curveRmsMm: rms(off),
    stillScatter,
    warnings: [...warnings, ...over.value.warnings].map(({ code }) => code.replace(/^.*\//, '')),
    ms: ms(),
  };
}

/** As the page has it once the clip is followed. */
export function clipInput(
  clip: StudyClip,
  track: Track,
  ticksPerSecond: number,
  references: References,
): Result<MeasureInput, ClipFailure | MeasurementFailure> {
  const seed: MeasureInput = {
    views: [seedView(clip, track.seed.timeTicks)],
    sideViews: [],
    references,
    cameraStill: false,
    captures: [captureOf(clip, track, ticksPerSecond)],
    cameraProfile: null,
  };
  const made = clipViews(seed, track);
  return made.ok ? ok({ ...seed, ...made.value }) : made;
}

/** Of the largest application, the mean over its held frames. */
function trueStroke({ truth }: StudyClip): number {
  const all = truth.applications?.map(({ strokeMm }) => strokeMm) ?? [];
  return all.length > 0 ? Math.max(...all) : truth.strokeMm;
}

export function captureOf(clip: StudyClip, track: Track, ticksPerSecond: number): Capture {
  const [view] = clip.truth.views;
  const [first = 0, last = 0] = [track.timeTicks[0], track.timeTicks.at(-1)];
  return {
    id: 'c1',
    kind: 'clip',
    fileName: 'clip.mp4',
    mediaType: 'video/mp4',
    sizeBytes: 1,
    sha256: '0'.repeat(64),
    widthPx: view?.widthPx ?? 0,
    heightPx: view?.heightPx ?? 0,
    rotationDeg: 0,
    takenAt: null,
    fileWrittenAt: null,
    addedAt: null,
    focal35Mm: null,
    clip: {
      ticksPerSecond,
      frameCount: track.timeTicks.length,
      durationS: (last - first) / ticksPerSecond,
      codec: 'avc1',
      headerTime: null,
      framesBy: null,
    },
  };
}
